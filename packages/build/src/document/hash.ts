import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** SHA-256 (FIPS 180-4) of a text in UTF-8, as 64 lower-case hex digits. */
export function hashText(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

/** SHA-256 (FIPS 180-4) of bytes, as 64 lower-case hex digits. */
export function hashBytes(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}
