/** Types of picture that a build keeps, told from their first bytes and not from what a sender says. */
export type PictureType = 'image/jpeg' | 'image/png' | 'image/webp';

/** Largest picture that a build keeps, bytes. */
export const PICTURE_LIMIT = 25 * 1024 * 1024;

const ascii = (bytes: Uint8Array, from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to));

/**
 * Tells the type of a picture: JPEG (ISO/IEC 10918-1, SOI marker), PNG (ISO/IEC 15948, signature), WebP (RFC 9649, RIFF header).
 * @returns null when the bytes begin like none of them
 */
export function pictureType(bytes: Uint8Array): PictureType | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg';
  if (ascii(bytes, 0, 8) === '\u0089PNG\r\n\u001a\n') return 'image/png';
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') return 'image/webp';
  return null;
}
