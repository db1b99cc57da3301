import { describe, expect, it } from 'vitest';
import { type Slip, slipGrams } from '../../src/match-day/slip.ts';
import { isSlipFile, readSlipFile, slipFileText } from '../../src/match-day/slip-file.ts';

const SLIP: Slip = {
  venue: 'Example Water',
  water: 'kiln-pool',
  peg: '14a',
  day: '2026-12-06',
  match: null,
  hours: 5,
  caught: [
    { minute: 12, part: 'carp', grams: 3000 },
    { minute: 70, part: 'silvers', grams: 250 },
    { minute: 90, part: 'carp', grams: 1000 },
  ],
  fed: [
    { minute: 2, what: 'hemp, 13 m' },
    { minute: 75, what: 'pellet' },
  ],
  depths: [{ lineMetres: 13, depthMetres: 2.05 }],
  spot: 'margin',
  method: 'pole',
  bait: 'maggot',
  lines: 2,
  waterDegreesC: 6.5,
};

describe('the file of a slip', () => {
  it('is read again as it was written', async () => {
    const text = await slipFileText(SLIP);
    expect(isSlipFile(text)).toBe(true);
    expect(await readSlipFile(text)).toEqual({ ok: true, slip: SLIP });
    expect(slipGrams(SLIP)).toEqual(
      new Map([
        ['carp', 4000],
        ['silvers', 250],
      ]),
    );
  });

  it('of the first format, as phones wrote it until the second, is read and says nothing of feed and depths', async () => {
    const first =
      '{"format":"peg-atlas-slip-1","check":"4c211f13966c1fb862da9ad3cae6d52499d6a59acdbf1ef2353ea5750bed3a3b","id":"a1b2c3d4","venue":"Example Water","water":"kiln-pool","peg":"14a","day":"2026-12-06","match":null,"hours":5,"caught":[{"minute":12,"part":"carp","grams":3000}],"spot":"margin","method":"pole","bait":"maggot","lines":2,"waterDegreesC":6.5}';
    expect(isSlipFile(first)).toBe(true);
    const { fed: _, depths: __, ...rest } = SLIP;
    expect(await readSlipFile(first)).toEqual({
      ok: true,
      slip: { ...rest, id: 'a1b2c3d4', caught: [SLIP.caught[0]], fed: [], depths: [] },
    });
    expect(await readSlipFile(first.replace('3000', '9000'))).toMatchObject({ ok: false });
    // What the first format did not have cannot be slipped into it.
    const more = first.replace('"spot"', '"depths":[{"lineMetres":13,"depthMetres":2}],"spot"');
    expect(await readSlipFile(more)).toMatchObject({ ok: true, slip: { depths: [] } });
  });

  it('of a format to come is known as a slip, and says that the program is too old for it', async () => {
    const later = '{"format":"peg-atlas-slip-3"}';
    expect(isSlipFile(later)).toBe(true);
    expect(await readSlipFile(later)).toMatchObject({ ok: false, why: expect.stringContaining('newer guide') });
  });

  it('holds nothing but its own fields: a name put into it is left behind', async () => {
    const named = { ...SLIP, name: 'Pat Example', caught: [{ ...SLIP.caught[0]!, who: 'Pat Example' }] };
    const text = await slipFileText(named);
    expect(text).not.toContain('Pat');
    const inserted = text.replace('"venue"', '"angler":"Pat Example","venue"');
    const read = await readSlipFile(inserted);
    expect(JSON.stringify(read)).not.toContain('Pat');
  });

  it.each([
    ['{"format":"peg-atlas-slip-1"', 'cut off'],
    ['{"format":"other"}', 'no slip'],
    ['null', 'no slip'],
    ['[]', 'no slip'],
    [' '.repeat(60_001), 'larger than any slip'],
  ])('is refused: %s', async (text, why) => {
    expect(await readSlipFile(text)).toMatchObject({ ok: false, why: expect.stringContaining(why) });
  });

  it.each([
    { caught: [{ minute: 1, part: 'carp', grams: 9e9 }] },
    { caught: [{ minute: 99_999, part: 'carp', grams: 10 }] },
    { caught: Array.from({ length: 501 }, () => SLIP.caught[0]!) },
    { spot: 'x'.repeat(41) },
    { fed: [{ minute: 2, what: 'x'.repeat(31) }] },
    { fed: [{ minute: 2, what: ' ' }] },
    { fed: Array.from({ length: 61 }, () => ({ minute: 2, what: 'hemp' })) },
    { depths: [{ lineMetres: 13, depthMetres: 31 }] },
    { depths: [{ lineMetres: -1, depthMetres: 2 }] },
    { depths: [{ lineMetres: 1e308, depthMetres: 1e308 }] },
    { lines: 21 },
    { lines: 1.5 },
    { waterDegreesC: 60 },
    { hours: 0 },
    { day: '2026-02-30' },
  ])('is refused where it says what no day brings: %o', async (change) => {
    const text = await slipFileText({ ...SLIP, ...change } as Slip);
    expect(await readSlipFile(text)).toMatchObject({ ok: false, why: expect.stringContaining('cannot be read') });
  });

  it('is refused where a figure was changed after it was handed over', async () => {
    const text = (await slipFileText(SLIP)).replace('"carp",3000', '"carp",9000');
    expect(await readSlipFile(text)).toMatchObject({ ok: false, why: expect.stringContaining('was changed') });
  });
});
