import { describe, expect, it } from 'vitest';
import { pictureBytes, pictureName } from './attach.ts';

describe('a chosen picture', () => {
  it.each([
    ['engine_from_the_left.jpg', 'engine from the left'],
    ['plate 2.webp', 'plate 2'],
    ['IMG_20260314_101500.jpg', ''],
    ['image.jpg', ''],
    ['DSC00012.JPG', ''],
    ['1712345678.png', ''],
  ])('%s is called “%s”', (file, name) => expect(pictureName(file)).toBe(name));

  it('is kept byte for byte when the build keeps its type', async () => {
    const bytes = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3);
    expect(await pictureBytes(new Blob([bytes]))).toEqual({ ok: true, bytes });
  });

  it('that is none says what to choose', async () => {
    const kept = await pictureBytes(new Blob(['not a picture']));
    expect(kept).toMatchObject({ ok: false });
    expect(kept.ok ? '' : kept.says).toContain('JPEG, PNG or WebP');
  });
});
