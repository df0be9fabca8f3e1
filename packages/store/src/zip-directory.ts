/** The directory of a zip file (ISO/IEC 21320-1, which names APPNOTE 6.3.3): what is in it, before anything is unpacked. */

/** How the bytes of an entry lie in the file: as they are, or deflated (RFC 1951). */
export type Packing = 'stored' | 'deflated';

export interface ZipEntry {
  readonly name: string;
  readonly packing: Packing;
  /** CRC-32 (ISO/IEC/IEEE 8802-3, polynomial 0x04C11DB7) of the unpacked bytes. */
  readonly crc: number;
  /** Unpacked length as the directory says it, bytes. */
  readonly size: number;
  readonly packed: Uint8Array;
}

const END_LENGTH = 22;
const LONGEST_COMMENT = 0xffff;
const HEADER_LENGTH = 46;
const LOCAL_LENGTH = 30;

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/**
 * Reads the directory of a zip file.
 * @returns null when the bytes are no whole zip file of one part, or one with encryption or a packing that no build's archive has
 */
export function zipDirectory(bytes: Uint8Array): readonly ZipEntry[] | null {
  const view = viewOf(bytes);
  const end = endOf(bytes, view);
  if (end === null) return null;
  const count = view.getUint16(end + 10, true);
  const directory = view.getUint32(end + 16, true);
  const entries: ZipEntry[] = [];
  let at = directory;
  for (let index = 0; index < count; index += 1) {
    if (at + HEADER_LENGTH > end || view.getUint32(at, true) !== 0x02014b50) return null;
    const entry = entryAt(bytes, view, at);
    if (!entry) return null;
    entries.push(entry);
    at += HEADER_LENGTH + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return at === directory + view.getUint32(end + 12, true) ? entries : null;
}

/** Place of the record that ends a zip file; a comment may follow it. */
function endOf(bytes: Uint8Array, view: DataView): number | null {
  const last = bytes.length - END_LENGTH;
  for (let at = last; at >= 0 && at >= last - LONGEST_COMMENT; at -= 1)
    if (view.getUint32(at, true) === 0x06054b50 && at + END_LENGTH + view.getUint16(at + 20, true) === bytes.length)
      return at;
  return null;
}

function entryAt(bytes: Uint8Array, view: DataView, at: number): ZipEntry | null {
  const encrypted = (view.getUint16(at + 8, true) & 1) !== 0;
  const method = view.getUint16(at + 10, true);
  const length = view.getUint32(at + 20, true);
  const local = view.getUint32(at + 42, true);
  const name = bytes.subarray(at + HEADER_LENGTH, at + HEADER_LENGTH + view.getUint16(at + 28, true));
  if (encrypted || (method !== 0 && method !== 8)) return null;
  if (local + LOCAL_LENGTH > bytes.length || view.getUint32(local, true) !== 0x04034b50) return null;
  const start = local + LOCAL_LENGTH + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  if (start + length > bytes.length) return null;
  return {
    name: new TextDecoder().decode(name),
    packing: method === 0 ? 'stored' : 'deflated',
    crc: view.getUint32(at + 16, true),
    size: view.getUint32(at + 24, true),
    packed: bytes.subarray(start, start + length),
  };
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** CRC-32 of bytes, as zip files carry it. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (CRC_TABLE[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
