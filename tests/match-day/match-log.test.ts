import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { matchFileText, readMatchFile } from '../../src/match-day/match-file.ts';
import {
  agreedValue,
  conflictsOf,
  mergedNotes,
  type Note,
  noteOf,
  standingNotes,
} from '../../src/match-day/match-log.ts';
import {
  ABOUT,
  bothNets,
  doubtOf,
  gramsOfKilograms,
  gramsOfPounds,
  historyOf,
  onScales,
  partGrams,
  totalGrams,
  weighedIn,
} from '../../src/match-day/scales.ts';

const add = (notes: readonly Note[], phone: string, about: string, value: unknown, at = '2026-12-06T15:00'): Note[] => [
  ...notes,
  noteOf(notes, phone, about, value, at),
];

describe('notes of two phones', () => {
  test('a later note on a phone stands in place of the earlier, whatever the clock says', () => {
    const notes = add(add([], 'a1', 'scales p/1', 1, '2026-12-07T09:00'), 'a1', 'scales p/1', 2, '2026-12-06T09:00');
    expect(agreedValue(standingNotes(notes), 'scales p/1')).toBe(2);
    expect(notes).toHaveLength(2);
  });

  test('two phones that differ are shown, and a choice settles it on both', () => {
    const one = add([], 'a1', 'scales p/1', 1);
    const other = add([], 'b2', 'scales p/1', 2);
    const both = mergedNotes(one, other).notes;
    const [conflict] = conflictsOf(standingNotes(both));
    expect(conflict?.notes.map(({ value }) => value).sort()).toEqual([1, 2]);
    expect(agreedValue(standingNotes(both), 'scales p/1')).toBeUndefined();
    const settled = add(both, 'a1', 'scales p/1', 2);
    expect(conflictsOf(standingNotes(mergedNotes(other, settled).notes))).toEqual([]);
  });

  test('two phones that say the same do not differ', () => {
    const both = mergedNotes(add([], 'a1', 'x', { nets: [1] }), add([], 'b2', 'x', { nets: [1] })).notes;
    expect(conflictsOf(standingNotes(both))).toEqual([]);
  });

  test('merging is the same in any order and any number of times, and loses nothing that was noted', () => {
    const step = fc.record({
      phone: fc.constantFrom('a', 'b', 'c'),
      about: fc.constantFrom('x', 'y'),
      value: fc.integer({ max: 3, min: 0 }),
      hears: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        const phones: Record<string, readonly Note[]> = { a: [], b: [], c: [] };
        for (const { phone, about, value, hears } of steps) {
          phones[phone] = add(phones[phone]!, phone, about, value);
          if (hears) phones.a = mergedNotes(phones.a!, phones[phone]!).notes;
        }
        const left = mergedNotes(mergedNotes(phones.a!, phones.b!).notes, phones.c!).notes;
        const right = mergedNotes(
          phones.c!,
          mergedNotes(mergedNotes(phones.b!, phones.a!).notes, phones.b!).notes,
        ).notes;
        const told = (notes: readonly Note[]) =>
          [...standingNotes(notes)].map(([about, heads]) => [about, heads.map(({ value }) => value).sort()]).sort();
        expect(told(left)).toEqual(told(right));
        expect(left).toHaveLength(steps.length);
      }),
    );
  });
});

describe('the file that is handed over', () => {
  const notes = add(add([], 'a1', ABOUT.entry('e1'), { name: 'Pat Example' }), 'a1', ABOUT.scales('p/1'), {
    status: 'weighed',
    nets: [500],
    fish: {},
  });
  const file = { match: 'm', venue: 'v', phone: 'a1', hasNames: false, notes };

  test('reads back, holds no name unless it was asked for, and the same file twice adds nothing', async () => {
    const text = await matchFileText(file);
    expect(text).not.toContain('Pat');
    const read = await readMatchFile(text);
    if (!read.ok) throw new Error(read.why);
    expect(read.isEdited).toBe(false);
    expect(read.file.notes).toHaveLength(2);
    expect(mergedNotes(read.file.notes, read.file.notes).added).toBe(0);
    expect(await matchFileText({ ...file, hasNames: true })).toContain('Pat Example');
  });

  test('tells an edited file, a broken one and another kind', async () => {
    const text = await matchFileText(file);
    expect(await readMatchFile(text.replace('500', '5000'))).toMatchObject({ ok: true, isEdited: true });
    expect(await readMatchFile(text.slice(0, 80))).toMatchObject({
      ok: false,
      why: expect.stringContaining('cut off'),
    });
    expect(await readMatchFile('{"round":1}')).toMatchObject({ ok: false, why: 'It is no file of a match day.' });
    expect(await readMatchFile(text.replace('"notes":[', '"notes":[3,'))).toMatchObject({ ok: false });
  });
});

describe('the scales', () => {
  test('reads pounds, ounces and drams, and kilograms, and refuses what is none', () => {
    // 1 lb = 453.59237 g by definition; 1 oz = 28.349523125 g.
    expect(gramsOfPounds('1', '', '')).toBeCloseTo(453.59237, 9);
    expect(gramsOfPounds('', '1', '0')).toBeCloseTo(28.349523125, 9);
    expect(gramsOfPounds('12', '16', '')).toBeNull();
    expect(gramsOfPounds('1234', '', '')).toBeNull();
    expect(gramsOfPounds('', '', '')).toBeNull();
    expect(gramsOfPounds('999', '', '')).toBeNull();
    expect(gramsOfKilograms('4,25')).toBe(4250);
    expect(gramsOfKilograms('42.5.1')).toBeNull();
  });

  test('asks about a digit too many and about the same net again', () => {
    expect(doubtOf(50_000, [], [5000, 4000, 3000])).toBe('heavy');
    expect(doubtOf(9000, [], [5000, 4000, 3000])).toBeNull();
    expect(doubtOf(5000, [{ grams: 5000, part: null }], [])).toBe('again');
    // The first bag of the day has none beside it: it is held against the log.
    expect(doubtOf(145_000, [], [], 40_000)).toBe('record');
    expect(doubtOf(30_000, [{ grams: 15_000, part: null }], [], 40_000)).toBe('record');
    expect(doubtOf(39_000, [], [], 40_000)).toBeNull();
    expect(doubtOf(39_000, [], [], 0)).toBeNull();
  });

  test('what nets that were weighed apart hold adds up to the bag, whatever they are; a mixed one leaves every part open', () => {
    const parts = ['silvers', 'carp', 'f1s'];
    const net = fc.record({ grams: fc.integer({ min: 1, max: 50_000 }), part: fc.constantFrom(...parts) });
    fc.assert(
      fc.property(fc.array(net, { minLength: 1, maxLength: 20 }), (nets) => {
        const said = onScales({ status: 'weighed', nets, fish: {} })!;
        const grams = partGrams(said, parts)!;
        expect(Object.keys(grams)).toEqual(parts);
        expect(Object.values(grams).reduce((sum, own) => sum + own, 0)).toBe(totalGrams(said));
        const mixed = [...nets, { grams: 5, part: null }];
        expect(partGrams({ nets: mixed }, parts)).toBeNull();
      }),
    );
    expect(partGrams({ nets: [{ grams: 5, part: 'eels' }] }, parts)).toBeNull();
    expect(onScales({ status: 'weighed', nets: [{ grams: 5, part: 7 }] })).toBeNull();
    expect(onScales({ status: 'weighed', nets: [null] })).toBeNull();
    // As phones noted nets before these had parts.
    expect(onScales({ status: 'weighed', nets: [300] })?.nets).toEqual([{ grams: 300, part: null }]);
  });

  test('two scales that weighed nets of their own are put together, a net that both wrote down once', () => {
    const net = (grams: number, part: string | null = null) => ({ grams, part });
    const said = (...nets: { grams: number; part: string | null }[]) =>
      onScales({ status: 'weighed', nets, fish: { carp: nets.length } });
    expect(bothNets([said(net(500)), said(net(300))])?.nets).toEqual([net(500), net(300)]);
    expect(bothNets([said(net(500), net(200)), said(net(500), net(300))])?.nets).toEqual([
      net(500),
      net(200),
      net(300),
    ]);
    // Two nets of one weight on one scale are two.
    expect(bothNets([said(net(500), net(500)), said(net(500), net(300))])?.nets).toEqual([
      net(500),
      net(500),
      net(300),
    ]);
    expect(bothNets([said(net(500, 'carp')), said(net(500, 'silvers'))])?.nets).toHaveLength(2);
    expect(bothNets([said(net(500)), said(net(300), net(20))])?.fish).toEqual({ carp: 2 });
    // What one of them says already is no third answer.
    expect(bothNets([said(net(500)), said(net(500), net(300))])).toBeNull();
    expect(bothNets([said(net(500)), onScales({ status: 'dnw', nets: [] })])).toBeNull();
    expect(bothNets([said(net(500)), null])).toBeNull();
  });

  test('tells changes in the order they were made, whatever the clocks of the phones say', () => {
    const first = add([], 'a1', 'x', 1, '2027-12-06T15:00');
    const second = add(first, 'b2', 'x', 2, '2026-12-06T15:05');
    const third = add(second, 'a1', 'x', 3, '1970-01-01T00:00');
    expect(historyOf(third.toReversed(), 'x').map(({ value }) => value)).toEqual([1, 2, 3]);
    const ring = [
      { ...first[0]!, id: 'c.1', replaces: ['c.2'] },
      { ...first[0]!, id: 'c.2', replaces: ['c.1'] },
    ];
    expect(historyOf(ring, 'x')).toHaveLength(2);
  });

  test('takes only what fits together, and counts pegs that all phones agree on', () => {
    expect(onScales({ status: 'weighed', nets: [], fish: {} })).toBeNull();
    expect(onScales({ status: 'dnw', nets: [5], fish: {} })).toBeNull();
    expect(onScales({ status: 'flew', nets: [], fish: {} })).toBeNull();
    const notes = add(
      add([], 'a1', ABOUT.scales('p/1'), { status: 'weighed', nets: [300, 200], fish: { carp: 1 } }),
      'a1',
      ABOUT.scales('p/2'),
      { status: 'dnw', nets: [] },
    );
    expect(weighedIn([{ name: 'A', pegs: ['p/1', 'p/2', 'p/3'] }], standingNotes(notes))).toEqual([
      { section: 'A', peg: 'p/1', status: 'weighed', grams: 500 },
      { section: 'A', peg: 'p/2', status: 'dnw', grams: 0 },
    ]);
  });
});
