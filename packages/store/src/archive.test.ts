import { hashBytes } from '@oddwheel/build/document/hash';
import { strToU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { archiveFileName, packArchive, readArchive } from './archive.ts';
import { BENCH_TEXT, benchOptions } from './bench-build.ts';
import type { BuildContent } from './store.ts';

const { validate } = benchOptions;
const picture = Uint8Array.from({ length: 5000 }, (_, i) => (i * 37) % 251);
const HASH = hashBytes(picture);
const content: BuildContent = {
  build: BENCH_TEXT,
  history: '{"v": 1, "name": "Größe 17 → 19"}\n',
  log: '{"id": "a.1"}\n{"id": "cut',
  runOut: '{"id": "phone.1"}\n',
  pictures: new Map([[HASH, picture]]),
};
const zip = (files: Zippable): Uint8Array => zipSync(files, { mtime: new Date(1980, 0, 1) });
const build = strToU8(BENCH_TEXT);

/** The only fault of a file that must be refused. */
function fault(bytes: Uint8Array) {
  const result = readArchive(bytes, validate);
  if (result.ok) throw new Error('It was taken.');
  expect(result.faults).toHaveLength(1);
  return result.faults[0];
}

/** The bytes with another name of the same length in an entry's two headers. */
function renamed(bytes: Uint8Array, from: string, to: string): Uint8Array {
  const text = Buffer.from(bytes).toString('latin1').replaceAll(from, to);
  return new Uint8Array(Buffer.from(text, 'latin1'));
}

describe('a build as one file', () => {
  it('comes back as it went in, byte for byte, and the same build makes the same file', () => {
    const bytes = packArchive(content);
    expect(readArchive(bytes, validate)).toEqual({ ok: true, content });
    expect(packArchive({ ...content, pictures: new Map(content.pictures) })).toEqual(bytes);
  });

  it('is a zip file that any other unzip program reads', () => {
    const files = unzipSync(packArchive(content));
    const texts = ['build.json', 'history.ndjson', 'log.ndjson'];
    expect(Object.keys(files).sort()).toEqual([...texts, `pictures/${HASH}`, 'true.ndjson']);
    expect(new TextDecoder().decode(files['build.json'])).toBe(BENCH_TEXT);
  });

  it('needs no log, no history and no picture, and may have been packed again by hand', () => {
    const only = { build: BENCH_TEXT, history: '', log: '', runOut: '', pictures: new Map() };
    expect(readArchive(packArchive(only), validate)).toEqual({ ok: true, content: only });
    expect(readArchive(zip({ 'pictures/': new Uint8Array(), 'build.json': build }), validate).ok).toBe(true);
  });

  it('is named after the build, in any script, and without anything that a path could be made of', () => {
    expect(archiveFileName('Marsh hauler')).toBe('Marsh-hauler.oddwheel.zip');
    expect(archiveFileName('../Schilf/Karre Nº 2')).toBe('Schilf-Karre-Nº-2.oddwheel.zip');
    expect(archiveFileName('…')).toBe('build.oddwheel.zip');
  });
});

describe('what is no saved build is refused', () => {
  it('when it is no zip file, or ends too early', () => {
    expect(fault(strToU8(BENCH_TEXT))?.code).toBe('archive.no-zip');
    expect(fault(new Uint8Array())?.code).toBe('archive.no-zip');
    const whole = packArchive(content);
    for (const length of [10, 100, whole.length >> 1, whole.length - 1])
      expect(fault(whole.subarray(0, length))?.code).toBe('archive.no-zip');
  });

  it('when any byte of what it holds was changed on the way', () => {
    const whole = packArchive(content);
    for (let at = 60; at < whole.length; at += 97) {
      const bytes = whole.slice();
      bytes[at] = (bytes[at] ?? 0) ^ 0x55;
      const result = readArchive(bytes, validate);
      // A byte of a header that says nothing of the content may differ; the content never.
      if (result.ok) expect(result.content).toEqual(content);
    }
    const torn = whole.slice();
    torn[60] = (torn[60] ?? 0) ^ 0xff;
    expect(fault(torn)).toMatchObject({ code: 'archive.damaged', read: '"build.json"' });
  });

  it('when there is no build in it', () => {
    expect(fault(zip({ 'log.ndjson': new Uint8Array() }))).toMatchObject({
      code: 'archive.no-build',
      read: '"log.ndjson"',
    });
    expect(fault(zip({}))?.code).toBe('archive.no-build');
  });

  it('when a picture is another than its name says', () => {
    const other = hashBytes(new Uint8Array([1]));
    expect(fault(zip({ 'build.json': build, [`pictures/${other}`]: picture }))).toMatchObject({
      code: 'archive.picture',
      accepted: `pictures/${HASH}`,
    });
  });

  it('when a name would lead elsewhere, or belongs to no build', () => {
    for (const name of [
      '../build.json',
      '/etc/passwd',
      'pictures/../../x',
      'C:\\build.json',
      'pictures/a.png',
      'a/build.json',
    ])
      expect(fault(zip({ 'build.json': build, [name]: build })), name).toMatchObject({
        code: 'archive.foreign',
        read: JSON.stringify(name),
      });
  });

  it('when a name stands in it twice', () => {
    const twice = renamed(zip({ 'build.json': build, 'build.jsoN': build }), 'build.jsoN', 'build.json');
    expect(fault(twice)?.code).toBe('archive.twice');
  });

  it('when it is too large, before anything is unpacked', () => {
    const bytes = zip({ 'build.json': build, 'log.ndjson': new Uint8Array(33 * 1024 * 1024) });
    expect(bytes.length).toBeLessThan(100_000);
    expect(fault(bytes)).toMatchObject({ code: 'archive.too-large', read: '33 MiB', accepted: 'at most 32 MiB' });
  });

  it('when it is said to be smaller than it is', () => {
    const bytes = zip({ 'build.json': build, 'log.ndjson': new Uint8Array(1_000_000) });
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    for (let at = 0; at + 4 <= bytes.length; at += 1)
      if (view.getUint32(at, true) === 1_000_000) view.setUint32(at, 1000, true);
    expect(fault(bytes)).toMatchObject({ code: 'archive.damaged', read: '"log.ndjson"' });
  });

  it('with the faults of the build in it, when that is torn or of a newer format', () => {
    expect(fault(zip({ 'build.json': strToU8('{"format": 9, "path": {}}') }))).toMatchObject({ address: '/format' });
    expect(fault(zip({ 'build.json': build.subarray(0, 40) }))?.line).toBeGreaterThan(0);
    expect(fault(zip({ 'build.json': new Uint8Array([0x7b, 0xff]) }))?.code).toBe('archive.not-text');
  });
});
