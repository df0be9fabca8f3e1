/** A build as one file: a zip of build.json, log.ndjson, history.ndjson, true.ndjson and pictures/. */
import { hashBytes } from '@oddwheel/build/document/hash';
import type { Fault } from '@oddwheel/build/fault';
import { TRUE_FILE } from '@oddwheel/build/true/types';
import { inflateSync, type Zippable, zipSync } from 'fflate';
import { PICTURE_LIMIT } from './picture.ts';
import type { BuildContent } from './store.ts';
import { crc32, type ZipEntry, zipDirectory } from './zip-directory.ts';

const MIB = 1024 * 1024;
/** Most that an archive may hold, unpacked, and most that one of its texts may; bytes. */
export const ARCHIVE_LIMIT = 256 * MIB;
const TEXT_LIMIT = 32 * MIB;

const ENDING = '.oddwheel.zip';
const TEXTS = { build: 'build.json', log: 'log.ndjson', history: 'history.ndjson', runOut: TRUE_FILE } as const;
const KEYS = ['build', 'log', 'history', 'runOut'] as const;
const PICTURE = /^pictures\/([0-9a-f]{64})$/;

/** The same content gives the same bytes: no entry carries the time of its making. */
const MADE = new Date(1980, 0, 1);

/** The file name of a build's archive, from the build's name: letters and digits of any script, the rest as hyphens. */
export function archiveFileName(name: string): string {
  const stem = name
    .normalize('NFC')
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 60);
  return `${stem === '' ? 'build' : stem}${ENDING}`;
}

/** Packs a build into one file. The same content gives the same bytes. */
export function packArchive(content: BuildContent): Uint8Array<ArrayBuffer> {
  const files: Zippable = {};
  for (const key of KEYS) if (content[key] !== '') files[TEXTS[key]] = new TextEncoder().encode(content[key]);
  for (const [hash, bytes] of content.pictures) files[`pictures/${hash}`] = [bytes, { level: 0 }];
  return zipSync(files, { level: 6, mtime: MADE });
}

export type ArchiveRead =
  | { readonly ok: true; readonly content: BuildContent }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Reads a build out of one file. Nothing of it is taken unless all of it is right.
 *
 * @param validate all faults of a build file; a build with any, or of a newer format, is refused with them
 * @returns the content, or all that is wrong with the file; an address is then one within build.json, or ""
 */
export function readArchive(bytes: Uint8Array, validate: (text: string) => readonly Fault[]): ArchiveRead {
  if (bytes.length > ARCHIVE_LIMIT) return { ok: false, faults: [tooLarge('The file', bytes.length, ARCHIVE_LIMIT)] };
  const directory = zipDirectory(bytes);
  if (!directory) return { ok: false, faults: [noArchive(bytes)] };
  const entries = directory.filter(({ name }) => name !== 'pictures/');
  const wrong = directoryFaults(entries);
  if (wrong.length > 0) return { ok: false, faults: wrong };

  const unpacked = entries.map((entry) => ({ name: entry.name, bytes: unpack(entry) }));
  const faults: Fault[] = [];
  const texts = { build: '', log: '', history: '', runOut: '' };
  const pictures = new Map<string, Uint8Array>();
  for (const { name, bytes: content } of unpacked) {
    const hash = PICTURE.exec(name)?.[1];
    if (!content) faults.push(damaged(name));
    else if (hash === undefined) {
      const text = textOf(content);
      const key = KEYS.find((one) => TEXTS[one] === name);
      if (text === null) faults.push(notText(name, content));
      else if (key) texts[key] = text;
    } else if (hashBytes(content) !== hash) faults.push(wrongHash(name, content));
    else pictures.set(hash, content);
  }
  if (faults.length === 0) faults.push(...validate(texts.build));
  return faults.length > 0 ? { ok: false, faults } : { ok: true, content: { ...texts, pictures } };
}

/** What can be told to be wrong before anything is unpacked. */
function directoryFaults(entries: readonly ZipEntry[]): Fault[] {
  const names = entries.map(({ name }) => name);
  const known = new Set<string>(Object.values(TEXTS));
  const faults: Fault[] = [];
  for (const name of new Set(names)) {
    if (!known.has(name) && !PICTURE.test(name)) faults.push(foreign(name));
    else if (names.filter((other) => other === name).length > 1) faults.push(twice(name));
  }
  for (const { name, size } of entries) {
    const limit = PICTURE.test(name) ? PICTURE_LIMIT : TEXT_LIMIT;
    if (size > limit) faults.push(tooLarge(name, size, limit));
  }
  const total = entries.reduce((sum, { size }) => sum + size, 0);
  if (total > ARCHIVE_LIMIT) faults.push(tooLarge('The build in the file', total, ARCHIVE_LIMIT));
  if (!names.includes(TEXTS.build)) faults.push(noBuild(names));
  return faults;
}

/** The bytes of an entry; null when they are not those that were packed. */
function unpack({ packing, packed, size, crc }: ZipEntry): Uint8Array | null {
  try {
    // With room for no more than the directory says, a file that lies about its size fills no memory.
    const bytes = packing === 'stored' ? packed.slice() : inflateSync(packed, { out: new Uint8Array(size) });
    return bytes.length === size && crc32(bytes) === crc ? bytes : null;
  } catch {
    return null;
  }
}

function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
}

const shown = (name: string): string => JSON.stringify(name.length > 80 ? `${name.slice(0, 79)}…` : name);

const fault = (code: string, problem: string, read: string, accepted: string): Fault => ({
  code: `archive.${code}`,
  address: '',
  problem,
  read,
  accepted,
});

const AN_ARCHIVE = `a file that "Save as one file" made, its name ending in ${ENDING}`;
const OF_A_BUILD =
  'build.json, log.ndjson, history.ndjson, true.ndjson, and pictures named by their SHA-256 in pictures/';

const noArchive = (bytes: Uint8Array): Fault =>
  fault('no-zip', 'This is no whole saved file of a build.', `${bytes.length} bytes that are no zip file`, AN_ARCHIVE);

const noBuild = (names: readonly string[]): Fault =>
  fault(
    'no-build',
    'There is no build.json in this file.',
    names.length === 0 ? 'an empty zip file' : names.slice(0, 3).map(shown).join(', '),
    AN_ARCHIVE,
  );

const foreign = (name: string): Fault =>
  fault('foreign', 'The file holds something that belongs to no build.', shown(name), OF_A_BUILD);

const twice = (name: string): Fault =>
  fault('twice', 'The file holds one name twice, so it cannot be told which is meant.', shown(name), 'each name once');

const damaged = (name: string): Fault =>
  fault(
    'damaged',
    'The file was damaged on its way.',
    shown(name),
    'the bytes as they were saved; copy the file again',
  );

const notText = (name: string, bytes: Uint8Array): Fault =>
  fault(
    'not-text',
    'A text in the file is not written in UTF-8.',
    `${shown(name)}, ${bytes.length} bytes`,
    'UTF-8 text',
  );

const wrongHash = (name: string, bytes: Uint8Array): Fault =>
  fault('picture', 'A picture is not the one that its name says.', shown(name), `pictures/${hashBytes(bytes)}`);

const inMib = (bytes: number): string => `${Math.ceil((bytes / MIB) * 10) / 10} MiB`;

const tooLarge = (what: string, size: number, limit: number): Fault =>
  fault('too-large', `${what} is too large.`, inMib(size), `at most ${inMib(limit)}`);
