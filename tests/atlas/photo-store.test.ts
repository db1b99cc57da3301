import { mkdtemp, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { keepCopies, photoBytes, photoSet } from '../../src/atlas/photo-store.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'peg-atlas-photos-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** A photo as a phone writes it: lying on its side, with a position and a name inside. */
async function phonePhoto(): Promise<string> {
  const file = join(folder, 'phone.jpg');
  const picture = sharp({ create: { width: 1200, height: 800, channels: 3, background: '#357' } });
  const exif = {
    IFD0: { Artist: 'Somebody Real' },
    IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '52/1 45/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '0/1 3/1 0/1' },
  };
  await writeFile(file, await picture.withExif(exif).withMetadata({ orientation: 6 }).jpeg().toBuffer());
  return file;
}

describe('photoSet', () => {
  it('plans copies upright and no wider than the picture', async () => {
    const set = await photoSet(await phonePhoto());
    expect([set.width, set.height]).toEqual([800, 1200]);
    expect(set.copies.map(({ format, width }) => `${width} ${format}`)).toEqual([
      '480 avif',
      '800 avif',
      '480 webp',
      '800 webp',
      '800 jpg',
    ]);
  });

  it('says in words that a file is no picture', async () => {
    const file = join(folder, 'not.jpg');
    await writeFile(file, 'not a picture');
    await expect(photoSet(file)).rejects.toThrow('not.jpg cannot be read as a picture');
  });
});

describe('photoBytes', () => {
  it('leaves position, name and every other block of metadata behind, and stands the picture upright', async () => {
    const file = await phonePhoto();
    expect((await sharp(file).metadata()).exif).toBeDefined();
    for (const copy of (await photoSet(file)).copies) {
      const bytes = await photoBytes(file, copy, folder);
      const { exif, xmp, iptc, width, height, orientation } = await sharp(bytes).metadata();
      expect([exif, xmp, iptc, orientation]).toEqual([undefined, undefined, undefined, undefined]);
      expect([width, height]).toEqual([copy.width, copy.width * 1.5]);
      expect(bytes.includes('Somebody Real')).toBe(false);
    }
  });

  it('lays what is see-through on white, in every format', async () => {
    const file = join(folder, 'see-through.png');
    const clear = {
      create: { width: 40, height: 30, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
    } as const;
    await writeFile(file, await sharp(clear).png().toBuffer());
    for (const copy of (await photoSet(file)).copies) {
      const { channels } = await sharp(await photoBytes(file, copy, folder)).stats();
      for (const { min } of channels.slice(0, 3)) expect(min).toBeGreaterThan(250);
    }
  });

  it('turns a drawing into pixels, so that nothing in it can run', async () => {
    const file = join(folder, 'sketch.svg');
    await writeFile(
      file,
      '<svg xmlns="http://www.w3.org/2000/svg" width="600" height="300"><script>alert(1)</script><rect width="600" height="300" fill="red"/></svg>',
    );
    const { copies } = await photoSet(file);
    const bytes = await photoBytes(file, copies.find(({ format }) => format === 'jpg')!, folder);
    expect((await sharp(bytes).metadata()).format).toBe('jpeg');
    expect(bytes.includes('script')).toBe(false);
  });

  it('makes a copy once and then gives back the kept one', async () => {
    const file = await phonePhoto();
    const copy = (await photoSet(file)).copies[0]!;
    const first = await photoBytes(file, copy, folder);
    await rm(file);
    expect(await photoBytes(file, copy, folder)).toEqual(first);
  });

  it.each([
    ['cut short', (held: Buffer) => held.subarray(0, held.length >> 1)],
    ['empty', () => Buffer.alloc(0)],
    ['another picture', (held: Buffer) => Buffer.concat([held.subarray(0, 65), Buffer.from('another')])],
    ['of a program before this', (held: Buffer) => held.subarray(65)],
    ['one bit off', (held: Buffer) => Buffer.from(held.map((byte, at) => (at === held.length - 9 ? byte ^ 1 : byte)))],
  ])('makes a kept copy anew that is %s', async (_, damage) => {
    const file = await phonePhoto();
    const copy = (await photoSet(file)).copies.find(({ format }) => format === 'webp')!;
    const whole = await photoBytes(file, copy, folder);
    const kept = join(folder, copy.name);
    await writeFile(kept, damage(await readFile(kept)));
    expect(await photoBytes(file, copy, folder)).toEqual(whole);
    expect(await photoBytes(file, copy, folder)).toEqual(whole);
  });

  it('gives the copy also where nothing can be kept', async () => {
    const file = await phonePhoto();
    const copy = (await photoSet(file)).copies.find(({ format }) => format === 'jpg')!;
    const bytes = await photoBytes(file, copy, join(file, 'no-folder'));
    expect((await sharp(bytes).metadata()).format).toBe('jpeg');
  });
});

describe('keepCopies', () => {
  /** Pixels that no encoder simplifies away. */
  const woven = (channels: 3 | 4) => {
    const [width, height] = [500, 300];
    const data = Buffer.from(Array.from({ length: width * height * channels }, (_, i) => (i * i) % 251));
    return sharp(data, { raw: { width, height, channels } });
  };

  it.each([
    ['a photograph that lies on its side', () => woven(3).withMetadata({ orientation: 8 }).jpeg()],
    ['one in colours of its own', () => woven(3).withIccProfile('p3').jpeg()],
    ['one in printing inks', () => woven(3).toColourspace('cmyk').jpeg()],
    ['one in greys of sixteen bits', () => woven(3).toColourspace('grey16').png()],
    ['one that can be seen through', () => woven(4).webp()],
  ])('keeps every copy as an encoder gives it straight from %s', async (_, picture) => {
    const file = join(folder, 'woven');
    const own = await mkdtemp(join(folder, 'kept-'));
    const bytes = await picture().toBuffer();
    await writeFile(file, bytes);
    await keepCopies(file, own);
    const { copies } = await photoSet(file);
    expect((await readdir(own)).sort()).toEqual(copies.map(({ name }) => name).sort());
    for (const { name, width, format } of copies) {
      const straight = sharp(bytes).autoOrient().resize({ width }).flatten({ background: '#fff' });
      const expected =
        format === 'avif'
          ? straight.avif({ quality: 50, effort: 2 })
          : format === 'webp'
            ? straight.webp({ quality: 75 })
            : straight.jpeg({ quality: 78, mozjpeg: true });
      const kept = await readFile(join(own, name));
      expect(kept.subarray(kept.indexOf('\n') + 1).equals(await expected.toBuffer()), name).toBe(true);
    }
  });

  it('leaves a copy that is kept, makes one that is damaged and one that is lost', async () => {
    const file = await phonePhoto();
    const own = await mkdtemp(join(folder, 'kept-'));
    await keepCopies(file, own);
    const [first, second, third] = (await readdir(own)).sort().map((name) => join(own, name)) as [
      string,
      string,
      string,
    ];
    const [whole, before] = [await readFile(second), await stat(first)];
    await writeFile(second, whole.subarray(9));
    await rm(third);
    await keepCopies(file, own);
    expect((await stat(first)).ino).toBe(before.ino);
    expect(await readFile(second)).toEqual(whole);
    expect((await readFile(third)).length).toBeGreaterThan(64);
  });
});
