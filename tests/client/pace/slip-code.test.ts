import jsqr from 'jsqr';
import sharp from 'sharp';
import { expect, it } from 'vitest';
import { squareCode } from '../../../src/atlas/drawing/square-code.ts';
import { MAX_CODE_BYTES, slipCode } from '../../../src/client/pace/slip-code.ts';
import type { Slip } from '../../../src/match-day/slip.ts';
import { readSlipFile, slipFileText } from '../../../src/match-day/slip-file.ts';

// A general-purpose decoder is CommonJS: its function is the module or its default, as the loader will have it.
const decode = (typeof jsqr === 'function' ? jsqr : (jsqr as { default: typeof jsqr }).default) as typeof jsqr;

/** Dots a module, as the page draws it. */
const DOTS = 6;

/** What jsqr, which knows nothing of this project, reads from the modules as drawn. */
async function readBack(rows: readonly (readonly boolean[])[]): Promise<string | undefined> {
  const side = (rows.length + 8) * DOTS;
  const picture = Buffer.from(squareCode(rows, 'Code').replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" '));
  const { data, info } = await sharp(picture)
    .resize(side, side, { kernel: 'nearest' })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return decode(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

const slip = (fish: number): Slip => ({
  id: 'a1b2c3d4',
  venue: 'Pysgodfa’r Dŵr',
  water: 'kiln-pool',
  peg: '23',
  day: '2026-11-27',
  match: null,
  hours: 5,
  caught: Array.from({ length: fish }, (_, index) => ({ minute: index * 13, part: 'carp', grams: 1474.2 })),
  fed: [
    { minute: 1, what: 'groundbait, 13 m' },
    { minute: 62, what: 'pellet, margin' },
  ],
  depths: [
    { lineMetres: 1.5, depthMetres: 0.85 },
    { lineMetres: 13, depthMetres: 2.05 },
  ],
  spot: 'margin',
  method: 'pole',
  bait: '8 mm “pellet”',
  lines: 2,
  waterDegreesC: 6.5,
});

it('is read back by a decoder as the slip’s file, letters beyond ASCII too', async () => {
  for (const fish of Array.from({ length: 21 }, (_, index) => index)) {
    const rows = slipCode(await slipFileText(slip(fish)));
    const read = await readSlipFile((await readBack(rows!)) ?? '');
    expect(read).toEqual({ ok: true, slip: slip(fish) });
  }
});

/** A photograph of a screen held in a hand: turned, out of focus, in uneven light, packed as a phone packs it. */
async function photographed(rows: readonly (readonly boolean[])[], turnDegrees: number, blur: number): Promise<Buffer> {
  const picture = Buffer.from(squareCode(rows, 'Code').replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" '));
  const code = await sharp(picture)
    .resize(1000, 1000)
    .flatten({ background: '#fff' })
    .rotate(turnDegrees, { background: '#444' })
    .toBuffer();
  const light = Buffer.from(
    '<svg xmlns="http://www.w3.org/2000/svg" width="2000" height="1500"><defs><linearGradient id="g"><stop stop-color="#fff"/><stop offset="1" stop-color="#999"/></linearGradient></defs><rect width="2000" height="1500" fill="url(#g)"/></svg>',
  );
  const scene = await sharp({ create: { width: 2000, height: 1500, channels: 3, background: '#444' } })
    .composite([{ input: code, gravity: 'centre' }])
    .png()
    .toBuffer();
  return sharp(scene)
    .composite([{ input: light, blend: 'multiply' }])
    .blur(blur)
    .jpeg({ quality: 70 })
    .toBuffer();
}

it('the largest is read from a photograph: turned, a little out of focus, in uneven light', {
  timeout: 60_000,
}, async () => {
  const full = Array.from({ length: MAX_CODE_BYTES }, (_, index) => String.fromCharCode(48 + ((index * 7) % 61))).join(
    '',
  );
  const rows = slipCode(full)!;
  expect(rows).toHaveLength(117);
  for (const [turn, blur] of [
    [0, 1],
    [7, 1],
    [-20, 1.5],
    [90, 1],
  ] as const) {
    const { data, info } = await sharp(await photographed(rows, turn, blur))
      .ensureAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const read = decode(new Uint8ClampedArray(data), info.width, info.height)?.data;
    expect(read, `turned by ${turn}°, blurred by ${blur}`).toBe(full);
  }
});

it('of a long day fits: thirty fish, ten feeds and three depths, in words of ordinary length', async () => {
  const day = { ...slip(30), venue: 'Example Vale Fishery' };
  const fed = Array.from({ length: 10 }, (_, index) => ({ minute: index * 30, what: 'pellet, margin' }));
  const depths = [5, 11, 13].map((lineMetres) => ({ lineMetres, depthMetres: 2.05 }));
  expect(slipCode(await slipFileText({ ...day, fed, depths }))).not.toBeNull();
});

it('is none where the slip does not fit one code that a camera can read', async () => {
  expect(slipCode(await slipFileText(slip(70)))).toBeNull();
  expect(slipCode('x'.repeat(MAX_CODE_BYTES + 1))).toBeNull();
  const full = Array.from({ length: MAX_CODE_BYTES }, (_, index) => String.fromCharCode(48 + ((index * 7) % 61))).join(
    '',
  );
  expect(await readBack(slipCode(full)!)).toBe(full);
});
