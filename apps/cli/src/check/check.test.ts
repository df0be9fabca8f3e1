import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openSession, validateText } from '@oddwheel/build/session';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { HOME, run } from '../test-io.ts';
import { textWidth } from '../text-width.ts';

const DEMO = 'examples/marsh-hauler';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'oddwheel-check-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const demoSession = () => {
  const opened = openSession(readFileSync(join(HOME, DEMO, 'build.json'), 'utf8'));
  if (!opened.ok) throw new Error('the demo has faults');
  return opened.session;
};

describe('oddwheel check', () => {
  it('prints title, path, gears, findings, assumed, what to find out, balance and caution', async () => {
    const { out, err } = await run(['check', DEMO]);
    const { assessment } = demoSession();
    expect(err).toBe('');
    expect(out.startsWith(`${assessment.name}: ${assessment.about}`)).toBe(true);
    const heads = ['Path of power', 'Gears', 'Findings:', 'Torques on every shaft close to', 'Caution:'];
    const places = heads.map((head) => out.indexOf(head));
    expect(places.every((place, i) => place > (places[i - 1] ?? -1))).toBe(true);
    for (const { name } of assessment.path) expect(out).toMatch(new RegExp(`^${name}`, 'm'));
    for (const { name } of assessment.gears) expect(out).toMatch(new RegExp(`^${name} `, 'm'));
    for (const line of out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(100);
  });

  it('gives exit code 1 exactly when something fails', async () => {
    const { code } = await run(['check', DEMO]);
    const fails = demoSession().assessment.findings.some(({ severity }) => severity === 'fails');
    expect(code).toBe(fails ? 1 : 0);
  });

  it('puts another build beside it: the lowest reserve of each check, here and there', async () => {
    const { out } = await run(['check', DEMO, '--beside', 'examples/hill-trike']);
    expect(out).toContain('Beside hill-trike, lowest reserve of each');
    const json = JSON.parse((await run(['check', DEMO, '--json', '--beside', 'examples/hill-trike'])).out);
    const pull = json.beside.rows.find((row: { check: string }) => row.check === 'chain.pull');
    const lowest = (name: string): number =>
      Math.min(
        ...JSON.parse(name).findings.flatMap((f: { check: string; reserve: { value: number } | null }) =>
          f.check === 'chain.pull' && f.reserve ? [f.reserve.value] : [],
        ),
      );
    expect(pull.here.reserve).toBe(lowest((await run(['check', DEMO, '--json'])).out));
    expect(pull.there.reserve).toBe(lowest((await run(['check', 'examples/hill-trike', '--json'])).out));
    const wrong = await run(['check', DEMO, '--beside', 'examples/nothing-here']);
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('examples/nothing-here');
  });

  it('shows the gear and road speed asked for', async () => {
    const { out } = await run(['check', DEMO, '--gear', '2', '--speed', '18 km/h']);
    expect(out).toContain('Path of power, 2nd gear at 18\u00a0km/h');
    const json = JSON.parse((await run(['check', DEMO, '--json', '--gear', '2', '--speed', '18 km/h'])).out);
    expect(json.here).toEqual({ gear: '2', roadSpeed: 5 });
  });

  it('prints the whole assessment as JSON, the same bytes each time', async () => {
    const { out, err } = await run(['check', DEMO, '--json']);
    expect(err).toBe('');
    expect((await run(['check', DEMO, '--json'])).out).toBe(out);
    const json = JSON.parse(out);
    const { assessment } = demoSession();
    expect(Object.keys(json)[0]).toBe('format');
    expect(Object.keys(json).toSorted()).toEqual(['format', ...Object.keys(assessment)].toSorted());
    expect(json.format).toBe(1);
    expect(json.reserves).toEqual(Array.from(assessment.reserves, (x) => (Number.isFinite(x) ? x : null)));
    expect(json.findings.map((x: { id: string }) => x.id)).toEqual(assessment.findings.map(({ id }) => id));
  });

  it('colours a severity only on a terminal that wants it; the words are the same', async () => {
    const outputs: string[] = [];
    const terminal = { isTTY: true, write: (text: string) => outputs.push(text) };
    await run(['check', DEMO], { stdout: terminal, env: { TERM: 'xterm' } });
    await run(['check', DEMO], { stdout: terminal, env: { TERM: 'xterm', NO_COLOR: '1' } });
    const plain = (await run(['check', DEMO])).out;
    const [coloured = '', without] = outputs;
    expect(without).toBe(plain);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the escape is what is looked for
    expect(coloured.replace(/\u001b\[[\d;]*m/g, '')).toBe(plain);
  });

  it('lists every fault of a file with ten and more, with its place, and leaves the file as it is', async () => {
    const bytes = readFileSync(join(HOME, 'packages/build/fixtures/ten-faults.json'));
    const faults = validateText(bytes.toString());
    expect(faults.length).toBeGreaterThanOrEqual(10);
    mkdirSync(join(folder, 'ten'));
    writeFileSync(join(folder, 'ten/build.json'), bytes);
    const { code, out, err } = await run(['check', 'ten'], { cwd: folder });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    const heads = err.split('\n').filter((line) => line !== '' && !line.startsWith('    '));
    const place = ({ address, line, column }: (typeof faults)[number]) => `${address} (${line}:${column})`;
    expect(heads.map((head) => /^ten[/\\]build\.json (.*?\(\d+:\d+\)): ./.exec(head)?.[1])).toEqual(faults.map(place));
    expect(err.match(/^ {4}read: {5}./gm)).toHaveLength(faults.length);
    expect(err.match(/^ {4}accepted: ./gm)).toHaveLength(faults.length);
    expect(readFileSync(join(folder, 'ten/build.json'))).toEqual(bytes);
  });

  it('says both what is wrong with a gear and with a speed', async () => {
    const { code, err } = await run(['check', DEMO, '--gear', '9', '--speed', '18']);
    expect(code).toBe(2);
    expect(err).toContain('check --gear: The gearbox has no such gear.');
    expect(err).toContain('1, 2, 3, 4, 5');
    expect(err).toMatch(/check --speed: .*unit/);
  });

  it.each([
    ['nowhere', 'There is no build here.'],
    ['file', 'This is a file, not the folder of a build.'],
    ['latin', 'The build file is not text in UTF-8.'],
  ])('refuses %s', async (name, says) => {
    writeFileSync(join(folder, 'file'), '');
    mkdirSync(join(folder, 'latin'), { recursive: true });
    writeFileSync(join(folder, 'latin/build.json'), Buffer.from([0x22, 0xe4, 0x22]));
    const { code, out, err } = await run(['check', name], { cwd: folder });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(says);
    expect(err).toMatch(/read: {5}.+\n {4}accepted: .+/);
  });

  it('refuses a file that is no JSON, with line and column', async () => {
    mkdirSync(join(folder, 'torn'));
    writeFileSync(join(folder, 'torn/build.json'), '{\n  "format": 1,\n  "name": \n}\n');
    const { code, err } = await run(['check', 'torn'], { cwd: folder });
    expect(code).toBe(2);
    expect(err).toMatch(/^torn[/\\]build\.json.*\((3|4):\d+\): /);
  });
});
