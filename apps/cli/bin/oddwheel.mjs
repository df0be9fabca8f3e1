#!/usr/bin/env node
import { existsSync } from 'node:fs';

const bundle = new URL('../dist/oddwheel.mjs', import.meta.url);
if (!existsSync(bundle)) {
  const { ensureInstalled } = await import('../../../scripts/install.mjs');
  const { buildCommand } = await import('../../../scripts/build.mjs');
  await ensureInstalled(console.error);
  await buildCommand(console.error);
}
await import(bundle.href);
