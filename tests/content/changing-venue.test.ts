import { expect, test } from 'vitest';
import { featuresOn, groundOn, standId } from '../../src/domain/stand.ts';
import { datumShiftSince } from '../../src/domain/water-history.ts';
import { FILE, type FileChange, faultsOf, messagesOf, replacing, smallCheckedVenue } from './small-venue.ts';

/** Peg 10 of the small venue had the number 9 until 1 June 2026; the record of number 10 is of today. */
const RENUMBERED: Readonly<Record<string, FileChange>> = {
  'pegs/mill-pond/10.md': replacing('water: mill-pond', 'was: [{ peg: "9", until: 2026-05-31 }]\nwater: mill-pond'),
  [FILE.sessions]: replacing('mill-pond,A,10,', 'mill-pond,A,9,'),
};

test('a sheet names the number of its day, and the session is of the stand that carried it', () => {
  const { sessions } = smallCheckedVenue(RENUMBERED);
  expect(sessions.at(-1)).toMatchObject({ peg: '10', painted: '9', status: 'dnw' });
  expect(sessions[0]).not.toHaveProperty('painted');
});

test('a number that nobody carried on the day is refused, and who had it before or after is told', () => {
  const [fault, ...others] = faultsOf({ 'pegs/mill-pond/10.md': RENUMBERED['pegs/mill-pond/10.md']! });
  expect(others).toEqual([]);
  expect(fault).toMatchObject({
    file: FILE.sessions,
    line: 4,
    field: 'peg',
    rule: 'peg-number-day',
    severity: 'error',
  });
  expect(fault?.expected).toContain('the stand that is peg 10 today carried it from 2026-06-01');
});

test('a new peg 2 does not take the log of the stand that carried 2 before it', () => {
  const { sessions, pegs } = smallCheckedVenue({
    'pegs/mill-pond/2.md': replacing('water: mill-pond', 'since: 2026-06-01\nwater: mill-pond'),
    'pegs/mill-pond/10.md': replacing('water: mill-pond', 'was: [{ peg: "2", until: 2026-05-31 }]\nwater: mill-pond'),
    [FILE.sessions]: (text) =>
      text
        .split('\n')
        .filter((line) => !line.includes(',A,10,'))
        .join('\n'),
  });
  expect(sessions.map(({ peg }) => peg)).toEqual(['1', '10']);
  expect(pegs).toHaveLength(3);
});

test('a retired stand leaves the guide and keeps its sessions, under its id', () => {
  const venue = smallCheckedVenue({
    'pegs/mill-pond/10.md': null,
    'pegs/mill-pond/s-old.md': replacingWhole(),
  });
  expect(venue.pegs.map(({ peg }) => peg)).toEqual(['1', '2']);
  expect(venue.retired?.map(({ peg, file }) => [peg, file])).toEqual([['s-old', 'pegs/mill-pond/s-old.md']]);
  expect(venue.sessions.at(-1)).toMatchObject({ peg: 's-old', painted: '10' });
});

/** The record of a stand retired in July, that carried 10. */
function replacingWhole(): string {
  return `---
id: s-old
was: [{ peg: "10", until: 2026-07-01 }]
retired: { from: 2026-07-02, why: Filled in }
water: mill-pond
position: { lat: 52.74999, lng: -0.0502 }
facing: 0
status: open
---
`;
}

test('what was plumbed from a peg before it was moved stays where it was plumbed', () => {
  const moved = (was: string) => ({
    [FILE.peg]: replacing('facing: 0', `facing: 0\nmoved: [{ on: 2026-05-01, metres: 10${was} }]`),
  });
  const { soundings } = smallCheckedVenue(moved(', was-at: { lat: 52.74999, lng: -0.0508 }'));
  expect(soundings[1]?.fromPeg).toBeUndefined();
  expect(soundings[1]?.at?.lng).toBeCloseTo(-0.0508, 8);
  expect(soundings[1]?.at?.lat).toBeGreaterThan(52.75);
  expect(faultsOf(moved('')).map(({ rule, severity }) => [rule, severity])).toEqual([
    ['sounding-before-move', 'warning'],
  ]);
});

test('features, platforms and claims have days, and the guide shows those of its own day', () => {
  const { pegs } = smallCheckedVenue({
    [FILE.peg]: (text) =>
      text.replace(
        'features: [corner]',
        'features: [corner, { id: reeds, until: 2026-03-01 }]\nplatform: [{ kind: timber, until: 2026-03-01 }, { kind: slabs, from: 2026-03-02 }]',
      ),
  });
  expect(pegs[0]).toMatchObject({ features: ['corner'], platform: { kind: 'slabs' } });
  expect(pegs[0]?.platform).not.toHaveProperty('from');
  expect(featuresOn(pegs[0]!, '2026-03-01')).toEqual(['corner', 'reeds']);
  expect(featuresOn(pegs[0]!, '2026-03-02')).toEqual(['corner']);
  expect(pegs[1]).not.toHaveProperty('datedFeatures');
});

test('a move to new ground begins a new peg effect', () => {
  const peg = { water: 'w', peg: '1', moved: [{ on: '2026-05-01', metres: 10, newGround: true }] };
  expect([groundOn(peg, '2026-04-30'), groundOn(peg, '2026-05-01')]).toEqual(['w/1~1', 'w/1']);
});

test('a water that was stocked, netted and dammed higher says so, and old depths are deeper by that', () => {
  const { waters } = smallCheckedVenue({
    [FILE.water]: replacing(
      'close-season: none',
      'stocked: [{ on: 2026-03-01, what: F1s, kg: 200 }]\nlevel-change: [{ on: 2026-04-15, by: 20 cm }]\nclose-season: none',
    ),
  });
  expect(waters[0]?.stocked).toEqual([{ on: '2026-03-01', what: 'F1s', kilograms: 200 }]);
  expect(datumShiftSince('2026-04-14', waters[0]!)).toBeCloseTo(0.2);
  expect(datumShiftSince('2026-04-15', waters[0]!)).toBe(0);
});

const HEAD = 'water: mill-pond';
const inPeg = (line: string): Readonly<Record<string, FileChange>> => ({
  [FILE.peg]: replacing(HEAD, `${line}\n${HEAD}`),
});

test.each([
  ['an until before its from', inPeg('was: [{ peg: "7", from: 2026-02-01, until: 2026-01-01 }]'), 'day-order'],
  [
    'numbers out of order',
    inPeg('was: [{ peg: "7", until: 2026-02-01 }, { peg: "8", until: 2026-01-01 }]'),
    'day-order',
  ],
  ['a number on two posts', inPeg('was: [{ peg: "2", until: 2026-01-01 }]'), 'number-overlap'],
  ['a number of another water', inPeg('was: [{ peg: "7", water: brick-pit, until: 2026-01-01 }]'), 'was-water'],
  [
    'two stands with one id',
    { ...inPeg('id: s-one'), 'pegs/mill-pond/2.md': replacing(HEAD, `id: s-one\n${HEAD}`) },
    'stand-id-duplicate',
  ],
  ['an id like a number', inPeg('id: 12'), 'stand-id'],
  [
    'a feature that ends first',
    { [FILE.peg]: replacing('[corner]', '[{ id: corner, from: 2026-02-01, until: 2026-01-01 }]') },
    'day-order',
  ],
  [
    'a feature with a slip',
    { [FILE.peg]: replacing('[corner]', '[{ id: corner, form: 2026-02-01 }]') },
    'field-unknown',
  ],
  ['a feature without an id', { [FILE.peg]: replacing('[corner]', '[{ until: 2026-02-01 }]') }, 'field-missing'],
  [
    'stockings out of order',
    {
      [FILE.water]: replacing(
        'kind: clay pit',
        'kind: clay pit\nstocked: [{ on: 2026-03-01, what: F1s }, { on: 2026-02-01, what: F1s }]',
      ),
    },
    'day-order',
  ],
  ['a format of tomorrow', { [FILE.venue]: replacing('name: Example', 'format: 3\nname: Example') }, 'format-newer'],
  ['no format at all', { [FILE.venue]: replacing('name: Example', 'format: old\nname: Example') }, 'format-unknown'],
  [
    'a session on a peg closed that day',
    { [FILE.peg]: replacing('status: open', 'status: closed\nstatus-reason: Boards\nstatus-since: 2026-05-01') },
    'fished-while-closed',
  ],
  [
    'a part before its day',
    { [FILE.venue]: replacing('[common carp]', '[common carp], since: 2026-09-01') },
    'part-before-since',
  ],
] as const)('%s is a fault with its place and the mend', (_, changes, rule) => {
  const faults = faultsOf(changes as Readonly<Record<string, FileChange>>).filter((fault) => fault.rule === rule);
  expect(faults.length, messagesOf(changes as Readonly<Record<string, FileChange>>).join('\n')).toBeGreaterThan(0);
  for (const { mend, expected, line } of faults) {
    expect(mend.length * expected.length).toBeGreaterThan(0);
    expect(line).toBeGreaterThan(1);
  }
});

test('ids made from water and number differ, and are always the same', () => {
  const ids = Array.from({ length: 5000 }, (_, i) => standId({ water: 'kiln-pool', peg: String(i) }));
  expect(new Set(ids).size).toBe(5000);
  expect(standId({ water: 'kiln-pool', peg: '23' })).toBe(ids[23]);
  expect(standId({ id: 's-own', water: 'kiln-pool', peg: '23' })).toBe('s-own');
});

test('pounds and ounces may stand in two columns, which no spreadsheet takes for a date', () => {
  const sheet = (rows: string) => `event,peg,status,weight_lb,weight_oz,carp_weight_lb,carp_weight_oz\n${rows}`;
  const { sessions } = smallCheckedVenue({
    [FILE.sessions]: sheet('2026-05-02-mill-pond,1,weighed,4,5,1,\n2026-05-02-mill-pond,2,weighed,,12,,\n'),
  });
  // 1 lb = 453.59237 g, 1 oz a sixteenth of it (Weights and Measures Act 1985, schedule 1).
  expect(sessions[0]?.weightGrams).toBeCloseTo(4.3125 * 453.59237, 6);
  expect(sessions[0]?.parts.carp?.weightGrams).toBeCloseTo(453.59237, 6);
  expect(sessions[1]?.weightGrams).toBeCloseTo(0.75 * 453.59237, 6);
  const rules = (text: string) => faultsOf({ [FILE.sessions]: text }).map(({ rule }) => rule);
  expect(rules(sheet('2026-05-02-mill-pond,1,weighed,4,16,,\n'))).toEqual(['number-range']);
  expect(rules('event,peg,status,weight,weight_lb\n2026-05-02-mill-pond,1,weighed,4-05,4\n')).toEqual(['weight-twice']);
  expect(rules('event,peg,status\n2026-05-02-mill-pond,1,dnw\n')).toContain('column-missing');
  expect(rules('event,peg,status,weight\n2026-05-02-mill-pond,1,weighed,4-May\n')).toEqual(['weight-date']);
});
