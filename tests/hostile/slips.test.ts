import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sha256Hex } from '../../src/match-day/even-numbers.ts';
import type { Slip } from '../../src/match-day/slip.ts';
import { isSlipFile, readSlipFile, slipFileText } from '../../src/match-day/slip-file.ts';

const SLIP: Slip = {
  id: 'a1b2c3d4',
  venue: 'Example Water',
  water: 'kiln-pool',
  peg: '14a',
  day: '2026-12-06',
  match: null,
  hours: 5,
  caught: [{ minute: 12, part: 'carp', grams: 3000 }],
  fed: [{ minute: 2, what: 'hemp' }],
  depths: [{ lineMetres: 13, depthMetres: 2.05 }],
  spot: 'margin',
  method: 'pole',
  bait: 'maggot',
  lines: 2,
  waterDegreesC: 6.5,
};
const text = await slipFileText(SLIP);

/** A file whose digest is right, whatever stands in it: somebody who can read this page can make one. */
async function signed(change: Readonly<Record<string, unknown>>): Promise<string> {
  const { format, check: _, ...body } = JSON.parse(text) as Record<string, unknown>;
  const changed = { ...body, ...change };
  return JSON.stringify({ format, check: await sha256Hex(JSON.stringify(changed)), ...changed });
}

describe('a slip from a stranger is refused in words', () => {
  it.each([
    ['cut off by a code that was half read', text.slice(0, text.length / 2)],
    ['with a piece twice, as a reader that stumbles gives it', text + text.slice(-40)],
    ['nothing', ''],
    ['binary', String.fromCharCode(...Array.from({ length: 4000 }, (_, index) => (index * 7919) % 256))],
    ['an address in place of a slip', 'https://evil.example/slip'],
    ['nested without end', `{"format":"peg-atlas-slip-2","caught":${'['.repeat(20_000)}${']'.repeat(20_000)}}`],
    ['longer than any slip', `{"format":"peg-atlas-slip-2","spot":"${'x'.repeat(70_000)}"}`],
    ['another kind of file', '{"format":"peg-atlas-match-1"}'],
    ['no object', '"peg-atlas-slip-2"'],
  ])('%s', async (_, given) => {
    const read = await readSlipFile(given);
    expect(read).toMatchObject({ ok: false, why: expect.stringMatching(/^It .*\.$|^Something in it .*\.$/) });
  });

  it.each<readonly [string, Readonly<Record<string, unknown>>]>([
    ['a weight beyond the scales', { caught: [[12, 'carp', 1e300]] }],
    ['a weight that is no number', { caught: [[12, 'carp', '3000']] }],
    ['a weight below nothing', { caught: [[12, 'carp', -5]] }],
    ['a minute of next year', { caught: [[9e8, 'carp', 30]] }],
    ['rows that are no rows', { caught: { 0: [12, 'carp', 30], length: 1 } }],
    ['a row of nothing', { caught: [null] }],
    ['a thousand feeds', { fed: Array.from({ length: 1000 }, () => [1, 'hemp']) }],
    ['a depth beyond any pond', { depths: [[13, 99]] }],
    ['a line beyond any cast', { depths: [[1000, 2]] }],
    ['a day that is none', { day: '2026-13-40' }],
    ['a day that is a path', { day: '../../2026' }],
    ['an id that is a path', { id: '../../x' }],
    ['hours without end', { hours: 1e9 }],
    ['a novel for a bait', { bait: 'x'.repeat(1000) }],
    ['a prototype', { caught: [[12, 'carp', 30]], fed: JSON.parse('{"__proto__":[[1,"x"]]}') }],
  ])('%s, with a digest that is right', async (_, change) => {
    expect(await readSlipFile(await signed(change))).toMatchObject({
      ok: false,
      why: expect.stringContaining('changed'),
    });
  });

  it('whatever single sign of it was changed on the way, unless it reads as it was written', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat({ max: text.length - 1 }),
        fc.string({ minLength: 1, maxLength: 1 }),
        async (at, sign) => {
          const read = await readSlipFile(text.slice(0, at) + sign + text.slice(at + 1));
          if (read.ok) expect(read.slip).toEqual(SLIP);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('and nothing thrown, whatever the text', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.string(), fc.json()), async (given) => {
        expect((await readSlipFile(given)).ok).toBe(false);
        expect(typeof isSlipFile(given)).toBe('boolean');
      }),
      { numRuns: 300 },
    );
  });
});
