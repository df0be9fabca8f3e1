import { expect, it } from 'vitest';
import { createPairing, PAUSE, TRIES } from './pairing.ts';

function setUp() {
  let time = 0;
  const codes: string[] = [];
  const pairing = createPairing(
    () => time,
    (code) => codes.push(code),
  );
  const wrong = () => String((Number(pairing.code()) + 1) % 1_000_000).padStart(6, '0');
  return { pairing, codes, wrong, pass: (ms: number) => (time += ms) };
}

it('gives each device its own token for the right code', () => {
  const { pairing, codes } = setUp();
  expect(codes).toEqual([expect.stringMatching(/^\d{6}$/)]);
  const phone = pairing.pair(pairing.code(), 'phone');
  const tablet = pairing.pair(pairing.code(), 'tablet');
  if (!phone.ok || !tablet.ok) throw new Error('not paired');
  expect(phone.token).not.toBe(tablet.token);
  expect(pairing.deviceOf(phone.token)).toBe('phone');
  expect(pairing.deviceOf(tablet.token)).toBe('tablet');
});

it('knows no other token', () => {
  const { pairing } = setUp();
  expect(pairing.deviceOf(undefined)).toBeNull();
  expect(pairing.deviceOf('')).toBeNull();
  expect(pairing.deviceOf('made-up')).toBeNull();
});

it('draws a new code after five wrong ones, and pauses', () => {
  const { pairing, codes, wrong, pass } = setUp();
  for (let left = TRIES - 1; left > 0; left--)
    expect(pairing.pair(wrong(), 'x')).toEqual({ ok: false, why: 'wrong', left });
  expect(pairing.pair(wrong(), 'x')).toEqual({ ok: false, why: 'paused', seconds: PAUSE / 1000 });
  expect(codes).toHaveLength(2);
  expect(pairing.pair(pairing.code(), 'x')).toEqual({ ok: false, why: 'paused', seconds: 30 });
  pass(PAUSE);
  expect(pairing.pair(pairing.code(), 'x').ok).toBe(true);
});
