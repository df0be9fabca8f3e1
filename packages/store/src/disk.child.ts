/**
 * A program of its own for the tests of the disk store: adds 1 to a number in the build, again and again, and prints each
 * number once its save is acknowledged. Arguments: folder, the key in "notes", number of saves (0: until killed).
 */
import { writeSync } from 'node:fs';
import { benchOptions } from './bench-build.ts';
import { openDiskStore } from './disk.ts';

const [folder = '', key = '', limit = '0'] = process.argv.slice(2);
const store = await openDiskStore(folder, benchOptions);
for (let done = 0; limit === '0' || done < Number(limit); done += 1) {
  const { text, hash } = await store.read();
  const value = Number(JSON.parse(text).notes[key] ?? 0) + 1;
  const patches = [{ op: 'set', at: `/notes/${key}`, value }] as const;
  const result = await store.save({ base: hash, patches, name: `${key} ${value}` });
  if (!result.ok) throw new Error(JSON.stringify(result));
  // Straight to the pipe: a number held in a buffer would die with the program.
  writeSync(1, `${value}\n`);
}
await store.close();
