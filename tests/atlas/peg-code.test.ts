import fc from 'fast-check';
import jsqr from 'jsqr';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { pegCode } from '../../src/atlas/peg-code.ts';

// A general-purpose decoder is CommonJS: its function is the module or its default, as the loader will have it.
const decode = (typeof jsqr === 'function' ? jsqr : (jsqr as { default: typeof jsqr }).default) as typeof jsqr;

/** What the decoder jsqr, which knows nothing of this project, reads from the drawing at some dots across. */
async function readBack(svg: string, dots: number): Promise<string | undefined> {
  const picture = Buffer.from(svg.replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" '));
  const { data, info } = await sharp(picture)
    .resize(dots, dots)
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return decode(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

describe('the code on a plate', () => {
  it('is read back as the address, small and large', async () => {
    const address = 'https://osierholt.example/guide/tallyman-lake/14a/';
    const svg = pegCode(address, 'Code');
    for (const dots of [200, 333, 900]) expect(await readBack(svg, dots)).toBe(address);
  });

  it('is read back whatever the water and the peg are called', async () => {
    const names = fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9-]{0,39}$/);
    await fc.assert(
      fc.asyncProperty(names, names, async (water, peg) => {
        const address = `https://club.example/${water}/${peg}/`;
        expect(await readBack(pegCode(address, peg), 600)).toBe(address);
      }),
      { numRuns: 15 },
    );
  });

  it('says what it is, with words that stay text', () => {
    expect(pegCode('https://club.example/', 'a "b" <c>')).toContain('aria-label="a &quot;b&quot; &lt;c>"');
  });
});
