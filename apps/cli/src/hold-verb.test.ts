import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { applyEdit, openSession } from '@oddwheel/build/session';
import { describe, expect, it } from 'vitest';
import { run } from './test-io.ts';
import { textWidth } from './text-width.ts';

const CART = fileURLToPath(new URL('../../../examples/rail-cart', import.meta.url));
const LEFT = 'bearing.static:/path/shafts/countershaft/seats/bearing-left';

describe('oddwheel hold', () => {
  it('tells the smallest change first, in lines that fit', async () => {
    const { code, out, err } = await run(['hold', CART, LEFT]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain('1. Fit a 6306 at bearing L of Countershaft instead of the 6206.');
    for (const line of out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(100);
  });

  it('gives patches as JSON that do what they say', async () => {
    const { out } = await run(['hold', CART, LEFT, '--json']);
    const [hold] = JSON.parse(out).holds;
    const opened = openSession(readFileSync(join(CART, 'build.json'), 'utf8'));
    if (!opened.ok) throw new Error('The demo has faults.');
    const edited = applyEdit(opened.session, hold.proposals[0].patches);
    const after = edited.ok ? edited.session.assessment.findings.find(({ id }) => id === LEFT) : null;
    expect(after?.severity).toBe('holds');
    expect(after?.reserve).toEqual(hold.proposals[0].after.reserve);
  });

  it('names the findings that there are where it is asked for another', async () => {
    const { code, err } = await run(['hold', CART, 'bearing.colour']);
    expect(code).toBe(2);
    expect(err).toContain('no such finding');
    expect(err).toContain(LEFT);
  });

  it('complains about a faulty file and leaves it alone', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'oddwheel-hold-'));
    const file = join(folder, 'build.json');
    writeFileSync(file, '{ "format": 4 }');
    const { code, err } = await run(['hold', folder]);
    expect(code).toBe(2);
    expect(err).not.toBe('');
    expect(readFileSync(file, 'utf8')).toBe('{ "format": 4 }');
  });
});
