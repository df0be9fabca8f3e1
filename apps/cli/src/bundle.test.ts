import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { run } from './test-io.ts';

const BIN = fileURLToPath(new URL('../bin/oddwheel.mjs', import.meta.url));

/** Runs the installed command as a shell would. */
const spawned = (args: readonly string[], cwd: string, input = '') =>
  spawnSync(process.execPath, [BIN, ...args], { cwd, input, encoding: 'utf8', env: { ...process.env, NO_COLOR: '1' } });

it('the bundled command makes a build and checks it as the sources do, and sets the exit code', async () => {
  const cwd = mkdtempSync(join(tmpdir(), 'oddwheel-bundle-'));
  try {
    expect(spawned(['new', 'hauler'], cwd)).toMatchObject({ status: 0, stderr: '' });
    const { code, out } = await run(['check', 'hauler', '--json'], { cwd });
    expect(spawned(['check', 'hauler', '--json'], cwd)).toMatchObject({ status: code, stdout: out, stderr: '' });
    const wrong = spawned(['check', 'nowhere'], cwd);
    expect(wrong).toMatchObject({ status: 2, stdout: '' });
    expect(wrong.stderr).toContain('There is no build here.');
    const list = spawned(['reckon', '--list', '--json'], cwd);
    expect(JSON.parse(list.stdout).methods.length).toBeGreaterThan(0);
  } finally {
    rmSync(cwd, { recursive: true, force: true });
  }
});

it('open serves until Ctrl+C, then ends cleanly though a page still listens', async () => {
  const cwd = mkdtempSync(join(tmpdir(), 'oddwheel-bundle-'));
  try {
    spawned(['new', 'hauler'], cwd);
    const open = spawn(process.execPath, [BIN, 'open', 'hauler', '--port', '0', '--no-browser', '--json'], { cwd });
    const ended = new Promise((resolve) => open.on('close', resolve));
    const line = await new Promise<string>((resolve) => open.stdout.once('data', (chunk) => resolve(String(chunk))));
    const events = await fetch(new URL('api/events', JSON.parse(line).url));
    expect(events.status).toBe(200);
    open.kill('SIGINT');
    expect(await ended).toBe(0);
  } finally {
    rmSync(cwd, { recursive: true, force: true });
  }
});
