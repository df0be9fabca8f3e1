/** Pairing of devices on the workshop's network: a code from the terminal once, a token in a cookie from then on. */
import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';

/** Wrong codes before a new code is drawn. */
export const TRIES = 5;
/** Time without tries after that, ms: at most 10 guesses a minute among a million codes. */
export const PAUSE = 30_000;

export type Paired =
  | { readonly ok: true; readonly token: string }
  | { readonly ok: false; readonly why: 'wrong'; readonly left: number }
  | { readonly ok: false; readonly why: 'paused'; readonly seconds: number };

export interface Pairing {
  /** The code that counts now. */
  readonly code: () => string;
  /** Tries a code for a device. */
  readonly pair: (code: string, device: string) => Paired;
  /** The device that a token was given to, or null. */
  readonly deviceOf: (token: string | undefined) => string | null;
}

const digest = (text: string): Buffer => createHash('sha256').update(text).digest();

/**
 * Pairing for one run of the host; nothing is kept beyond it.
 * @param now the time, ms
 * @param announce called with each new code
 */
export function createPairing(now: () => number, announce: (code: string) => void): Pairing {
  const devices = new Map<string, string>();
  let code = '';
  let left = TRIES;
  let pausedUntil = Number.NEGATIVE_INFINITY;

  const draw = (): void => {
    code = String(randomInt(1_000_000)).padStart(6, '0');
    left = TRIES;
    announce(code);
  };
  draw();

  const pair = (typed: string, device: string): Paired => {
    const wait = pausedUntil - now();
    if (wait > 0) return { ok: false, why: 'paused', seconds: Math.ceil(wait / 1000) };
    if (!timingSafeEqual(digest(typed), digest(code))) {
      left -= 1;
      if (left > 0) return { ok: false, why: 'wrong', left };
      pausedUntil = now() + PAUSE;
      draw();
      return { ok: false, why: 'paused', seconds: PAUSE / 1000 };
    }
    left = TRIES;
    const token = randomBytes(32).toString('base64url');
    devices.set(digest(token).toString('hex'), device);
    return { ok: true, token };
  };

  return {
    code: () => code,
    pair,
    deviceOf: (token) => (token === undefined ? null : (devices.get(digest(token).toString('hex')) ?? null)),
  };
}
