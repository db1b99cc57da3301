import { describe, expect, test } from 'vitest';
import { matchResultRows } from '../../../src/content/intake/match-result-rows.ts';
import { mergedNotes, type Note, noteOf } from '../../../src/match-day/match-log.ts';
import { ABOUT } from '../../../src/match-day/scales.ts';
import { exampleMatch } from '../../domain/example-match.ts';

const MATCH = exampleMatch({
  id: '2026-12-06-pairs',
  name: 'Pairs',
  entries: 4,
  sections: 2,
  allIn: '10:00',
  allOut: '15:30',
  plan: [
    { name: 'A', pegs: ['pit/1', 'pit/2'] },
    { name: 'B', pegs: ['pit/3', 'pit/4'] },
  ],
});

/** 12 lb 4 oz and 3 lb 0 oz 8 dr in grams, by the definition of the pound. */
const GRAMS = { heavy: 12.25 * 453.59237, light: (3 + 0.5 / 16) * 453.59237 };

function noted(phone: string, ...things: readonly (readonly [string, unknown])[]): Note[] {
  const notes: Note[] = [];
  for (const [about, value] of things) notes.push(noteOf(notes, phone, about, value, '2026-12-06T15:40:00Z'));
  return notes;
}
const weighed = (...nets: number[]) => ({ status: 'weighed', nets, fish: {} });
const settings = {
  units: { length: 'm', weight: 'lb' },
  bagParts: [
    { id: 'silvers', name: 'Silvers', species: [] },
    { id: 'carp', name: 'Carp', species: [] },
  ],
} as const;

describe('matchResultRows', () => {
  test('writes what the scales say, moves pegs, keeps the endings apart, and tells who never came', () => {
    const notes = noted(
      'a1',
      [ABOUT.entry('a1-1'), { name: 'Pat Example' }],
      [ABOUT.holds('a1-1'), 'pit/1'],
      [ABOUT.scales('pit/1'), weighed(GRAMS.heavy)],
      [ABOUT.scales('pit/2'), { status: 'dnw', nets: [], fish: {} }],
      [ABOUT.moved('pit/3'), { to: 'pit/9', why: 'loose board' }],
      [ABOUT.scales('pit/3'), { ...weighed(GRAMS.light), fish: { carp: 2 } }],
    );
    const read = matchResultRows(MATCH, notes, settings, 'one.txt');
    if (!read.ok) throw new Error(read.lines.join());
    expect(read.told).toEqual(['Never weighed, and left out of the log: pit/4.']);
    expect(read.match).toMatchObject({ day: '2026-12-06', hours: 5.5, framePlaces: 1, fished: 3, listing: 'full' });
    expect(
      read.match.rows.map(({ peg, section, name, status, weight }) => [peg, section, name, status, weight?.written]),
    ).toEqual([
      ['1', 'A', 'Pat Example', 'weighed', '12-04'],
      ['2', 'A', '', 'dnw', undefined],
      ['9', 'B', '', 'weighed', '3-0-8'],
    ]);
    expect(read.match.rows[2]!.parts).toEqual({ carp: { count: 2 } });
  });

  test('refuses what two phones say differently, with both', () => {
    const one = noted('a1', [ABOUT.scales('pit/1'), weighed(500)]);
    const other = noted('b2', [ABOUT.scales('pit/1'), weighed(600)]);
    const read = matchResultRows(MATCH, mergedNotes(one, other).notes, settings, 'two.txt');
    expect(read).toMatchObject({ ok: false });
    if (!read.ok)
      expect(read.lines[0]).toMatch(
        /two phones say different things of scales pit\/1: .*500.* and .*600.*Settle it on a phone/,
      );
  });

  test('refuses a peg that two phones gave to two people, instead of taking one name for the other', () => {
    const one = noted('a1', [ABOUT.entry('a1-x'), { name: 'Pat Example' }], [ABOUT.holds('a1-x'), 'pit/1']);
    const other = noted('b2', [ABOUT.entry('b2-x'), { name: 'Jo Sample' }], [ABOUT.holds('b2-x'), 'pit/1']);
    const all = [...mergedNotes(one, other).notes, ...noted('c3', [ABOUT.scales('pit/1'), weighed(500)])];
    const read = matchResultRows(MATCH, all, settings, 'two.txt');
    expect(read).toMatchObject({
      ok: false,
      lines: [expect.stringContaining('two.txt: pit/1 was given to two entries')],
    });
    const gone = noted('b2', [ABOUT.entry('b2-x'), { name: 'Jo Sample' }], [ABOUT.holds('b2-x'), null]);
    expect(matchResultRows(MATCH, [...one, ...gone, ...all.slice(-1)], settings, 'two.txt')).toMatchObject({
      ok: true,
      match: { rows: [{ name: 'Pat Example' }] },
    });
  });

  test('refuses a peg that is not in the plan, and a day on which nobody came to the scales', () => {
    expect(matchResultRows(MATCH, noted('a1', [ABOUT.scales('pit/77'), weighed(5)]), settings, 'f')).toMatchObject({
      ok: false,
      lines: [expect.stringContaining('pit/77 was weighed and is not in the plan')],
    });
    expect(matchResultRows(MATCH, [], settings, 'f')).toMatchObject({
      ok: false,
      lines: ['f: no peg of it has been to the scales.'],
    });
  });

  test('writes the weight of each part where every net was weighed apart, none where one may hold anything', () => {
    const net = (grams: number, part: string | null) => ({ grams, part });
    const said = (...nets: object[]) => ({ status: 'weighed', nets, fish: { carp: 3 } });
    const notes = noted(
      'a1',
      [ABOUT.scales('pit/1'), said(net(GRAMS.heavy, 'carp'), net(GRAMS.light, 'silvers'))],
      [ABOUT.scales('pit/2'), said(net(GRAMS.heavy, 'carp'), net(GRAMS.light, null))],
      [ABOUT.scales('pit/3'), said(net(GRAMS.heavy, 'carp'))],
    );
    const read = matchResultRows(MATCH, notes, settings, 'one.txt');
    if (!read.ok) throw new Error(read.lines.join());
    expect(read.match.rows.map(({ weight, parts }) => [weight?.written, parts])).toEqual([
      ['15-4-8', { silvers: { written: '3-0-8' }, carp: { count: 3, written: '12-04' } }],
      ['15-4-8', { carp: { count: 3 } }],
      ['12-04', { silvers: { written: '0' }, carp: { count: 3, written: '12-04' } }],
    ]);
    expect(read.told).toEqual([
      'Never weighed, and left out of the log: pit/4.',
      'A net of pit/2 may hold any fish: the bag is in the log, the weights of its parts stay open.',
    ]);
  });

  test('takes out of the log what was noted of a part and no longer stands, and nothing else', () => {
    const fish = { carp: 3 };
    const apart = { status: 'weighed', nets: [{ grams: GRAMS.heavy, part: 'carp' }], fish };
    const notes = noted(
      'a1',
      [ABOUT.scales('pit/1'), apart],
      [ABOUT.scales('pit/1'), { status: 'weighed', nets: [{ grams: GRAMS.heavy, part: null }], fish: {} }],
    );
    const read = matchResultRows(MATCH, notes, settings, 'one.txt');
    if (!read.ok) throw new Error(read.lines.join());
    expect(read.match.rows[0]!.parts).toEqual({ silvers: { written: '' }, carp: { written: '', count: null } });
  });

  test('refuses a part that is none of the venue’s, or was none on the day', () => {
    const notes = noted('a1', [
      ABOUT.scales('pit/1'),
      { status: 'weighed', nets: [{ grams: 5, part: 'eels' }], fish: {} },
    ]);
    expect(matchResultRows(MATCH, notes, settings, 'f')).toMatchObject({
      ok: false,
      lines: [expect.stringContaining('f: fish were weighed or counted as eels, which is no part of a bag here')],
    });
    const later = { ...settings, bagParts: [{ ...settings.bagParts[1], since: '2027-01-01' }] };
    const carp = noted('a1', [ABOUT.scales('pit/1'), { status: 'weighed', nets: [5], fish: { carp: 2 } }]);
    expect(matchResultRows(MATCH, carp, later, 'f').ok).toBe(false);
  });
});
