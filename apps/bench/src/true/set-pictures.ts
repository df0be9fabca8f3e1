import { hashBytes } from '@oddwheel/build/document/hash';
import type { Outbox } from '@oddwheel/store/browser-outbox';

/** Pictures of sets that wait in the browser, each under the hash of its bytes. */
export interface SetPictures {
  /** Keeps bytes and gives their hash. */
  readonly keep: (bytes: Uint8Array) => Promise<string>;
  /** The bytes that wait under a hash; undefined once they were sent. */
  readonly waiting: (hash: string) => Promise<Uint8Array | undefined>;
  readonly drop: (hash: string) => Promise<void>;
}

const noteOf = (hash: string): string => `picture ${hash}`;
/** Characters made of bytes at a time: more are too many arguments for some browsers. */
const STRETCH = 0x8000;

/** Bytes as text, as the notes of the outbox hold it: base64, RFC 4648. */
export function base64(bytes: Uint8Array): string {
  let binary = '';
  for (let from = 0; from < bytes.length; from += STRETCH)
    binary += String.fromCharCode(...bytes.subarray(from, from + STRETCH));
  return btoa(binary);
}

const fromBase64 = (text: string): Uint8Array => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

/** @param outbox of this browser, which outlasts a reload and a flat battery */
export function setPictures(outbox: Outbox): SetPictures {
  return {
    keep: async (bytes) => {
      const hash = hashBytes(bytes);
      await outbox.note(noteOf(hash), base64(bytes));
      return hash;
    },
    waiting: async (hash) => {
      const kept = await outbox.noted(noteOf(hash));
      return typeof kept === 'string' ? fromBase64(kept) : undefined;
    },
    drop: (hash) => outbox.note(noteOf(hash), null),
  };
}
