import { PICTURE_LIMIT, pictureType } from '@oddwheel/store/picture';

/** Longest side of a picture that is made smaller or of another type before it is kept, pixels. */
const LONGEST = 3000;
const QUALITY = 0.88;

/** Bytes that a build keeps, or why there are none. */
type Kept = { readonly ok: true; readonly bytes: Uint8Array } | { readonly ok: false; readonly says: string };

/**
 * The bytes of a chosen picture as a build keeps them. JPEG, PNG and WebP stay as they are; what else the browser can show,
 * and what is larger than a build keeps, becomes a JPEG.
 */
export async function pictureBytes(file: Blob): Promise<Kept> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (pictureType(bytes) !== null && bytes.length <= PICTURE_LIMIT) return { ok: true, bytes };
  return asJpeg(file, LONGEST, QUALITY);
}

/** Longest side of a picture beside a set of readings, pixels: enough to tell where the dial stood. */
const SMALL = 1600;
/** Largest such picture, and largest file that is read to make it from, bytes. */
const SMALL_LIMIT = 2 * 1024 * 1024;
const FILE_LIMIT = 50 * 1024 * 1024;
const SMALL_QUALITIES = [0.8, 0.6, 0.4];

/** A chosen picture made small enough to wait on a phone and to go through a weak connection: a JPEG of at most 2 MiB. */
export async function smallPicture(file: Blob): Promise<Kept> {
  const mib = (bytes: number): string => `${(bytes / 1024 / 1024).toFixed(1)} MiB`;
  if (file.size > FILE_LIMIT)
    return { ok: false, says: `The file has ${mib(file.size)}. Choose a picture of at most ${mib(FILE_LIMIT)}.` };
  for (const quality of SMALL_QUALITIES) {
    const made = await asJpeg(file, SMALL, quality);
    if (!made.ok || made.bytes.length <= SMALL_LIMIT) return made;
  }
  return { ok: false, says: `The picture stays above ${mib(SMALL_LIMIT)} even when made small. Choose another one.` };
}

async function asJpeg(file: Blob, longest: number, quality: number): Promise<Kept> {
  let seen: ImageBitmap;
  try {
    seen = await createImageBitmap(file);
  } catch {
    return { ok: false, says: 'This is no picture that the browser can read. Choose a JPEG, PNG or WebP file.' };
  }
  const scale = Math.min(1, longest / Math.max(seen.width, seen.height));
  const canvas = new OffscreenCanvas(Math.round(seen.width * scale), Math.round(seen.height * scale));
  canvas.getContext('2d')?.drawImage(seen, 0, 0, canvas.width, canvas.height);
  seen.close();
  const made = await canvas.convertToBlob({ type: 'image/jpeg', quality });
  return { ok: true, bytes: new Uint8Array(await made.arrayBuffer()) };
}

/** Names that cameras give: they say nothing of what is seen. */
const NUMBERED = /^(?:img|dsc|dscn|dscf|pxl|image|photo|picture|scan|p)?[-_ ]*[\d\W_]*$/i;

/** Name of a picture from that of its file; empty where the file's name says nothing. */
export function pictureName(fileName: string): string {
  const plain = fileName
    .replace(/\.[^.]*$/, '')
    .replaceAll('_', ' ')
    .trim();
  return NUMBERED.test(plain) ? '' : plain;
}
