import { expect, test } from 'vitest';
import { FILE, faultsOf, replacing, smallCheckedVenue } from './small-venue.ts';

const inPeg = (line: string) => ({ [FILE.peg]: replacing('facing: 0', `facing: 0\n${line}`) });
const position = (text: string) => ({ [FILE.peg]: replacing('{ lat: 52.74999, lng: -0.0509 }', text) });
const row = (path: string, text: string) => ({ [path]: (whole: string) => `${whole}${text}\n` });

test.each([
  ['a latitude beyond a pole', position('{ lat: 95.2, lng: -0.05 }'), 'latitude', 'position.lat'],
  ['a longitude beyond half a turn', position('{ lat: 52.7, lng: 531274 }'), 'longitude', 'position.lng'],
  ['a latitude without its longitude', position('{ lat: 52.7 }'), 'position', 'position'],
  ['a position given twice over', position('{ lat: 52.7, lng: 0, grid: TF 3127 1880 }'), 'position', 'position'],
  ['a grid reference of the sea', position('{ grid: WA 3127 1880 }'), 'grid-reference', 'position.grid'],
  ['a position that is text', position('by the gate'), 'field-shape', 'position'],
  ['a slope without its unit', inPeg('bank: { slope: 26 }'), 'slope-number', 'bank.slope'],
  ['inches beyond eleven', inPeg('margin-depth: 4 ft 12 in'), 'length-inches', 'margin-depth'],
  ['a platform wider than any', inPeg('platform: { kind: timber, width: 180 m }'), 'length-range', 'platform.width'],
  ['a list where text belongs', inPeg('where: [a, b]'), 'field-shape', 'where'],
  ['text where a list belongs', inPeg('photos: swim.jpg'), 'field-shape', 'photos'],
  [
    'a field of a list nobody reads',
    inPeg('photos: [{ file: a.jpg, alt: b, titel: c }]'),
    'field-unknown',
    'photos[0].titel',
  ],
  [
    'an unknown kind of hazard',
    { [FILE.peg]: replacing('kind: slippery', 'kind: slipery') },
    'field-word',
    'hazards[0].kind',
  ],
  [
    'a severity beyond five',
    { [FILE.peg]: replacing('severity: 2', 'severity: 6') },
    'number-range',
    'hazards[0].severity',
  ],
  [
    'a severity between two levels',
    { [FILE.peg]: replacing('severity: 2', 'severity: 2.5') },
    'whole-number',
    'hazards[0].severity',
  ],
  [
    'a leap day in a common year',
    { [FILE.peg]: replacing('2026-03-01', '2026-02-29') },
    'day-exists',
    'hazards[0].found-on',
  ],
  [
    'a day written the other way round',
    { [FILE.notice]: replacing('from: 2026-11-02', 'from: 02/11/2026') },
    'day',
    'from',
  ],
  [
    'an address without a scheme',
    { [FILE.venue]: replacing('units:', 'address: club.example/guide\nunits:') },
    'address',
    'address',
  ],
  [
    'a stand-off below 30 m',
    { [FILE.venue]: replacing('distance: 30 m', 'distance: 98 ft') },
    'stand-off-minimum',
    'stand-off.distance',
  ],
  [
    'a bag part with a hyphen',
    { [FILE.venue]: replacing('id: carp,', 'id: big-carp,') },
    'bag-part-id',
    'bag-parts[1].id',
  ],
  ['a sounding without a place', row(FILE.soundings, ',,,,,1.2,2026-04-01,'), 'sounding-place', ''],
  ['a sounding with two places', row(FILE.soundings, '52.7501,-0.0506,1,6,,1.2,2026-04-01,'), 'sounding-place', ''],
  ['a reading of nothing', row(FILE.gauge, '2026-11-13,,'), 'gauge-empty', ''],
  ['an event of no hours', { [FILE.events]: replacing(',match,5,', ',match,0,') }, 'number-range', 'hours'],
  ['an angler who has a name', { [FILE.sessions]: replacing('a-7f3k9q', 'jsmith') }, 'angler-reference', 'angler'],
])('refuses %s', (_, changes, rule, field) => {
  const errors = faultsOf(changes).filter((fault) => fault.rule !== 'column-unknown' && fault.severity === 'error');
  expect(errors.map((fault) => [fault.rule, fault.field])).toContainEqual([rule, field]);
});

test.each([
  ['notices/boards-off.md', '---\ntitle: x\nkind: news\nfrom: 2026-11-02\n---\n', 'notice-name'],
  ['notices/2026-02-30-x.md', '---\ntitle: x\nkind: news\nfrom: 2026-11-02\n---\n', 'notice-name'],
  ['rounds/november.csv', 'entry,water,peg\n', 'round-name'],
])('refuses the name of %s', (path, text, rule) => {
  expect(faultsOf({ [path]: text })).toMatchObject([{ file: path, rule }]);
});

test('reads a position by its grid reference', () => {
  const { at } = smallCheckedVenue(position('{ grid: TF 3165 1869 }')).pegs[0]!;
  // The middle of the square of 10 m the figures name.
  expect(at.lat).toBeCloseTo(52.74984, 4);
  expect(at.lng).toBeCloseTo(-0.05088, 4);
});

test('takes the venue’s own unit for a bare number, and its own bag parts for columns', () => {
  const venue = smallCheckedVenue({
    [FILE.venue]: replacing('{ length: m, weight: lb }', '{ length: ft, weight: kg }'),
    [FILE.peg]: replacing('facing: 0', 'facing: 0\nmargin-depth: 2'),
    [FILE.sessions]: replacing('23-08,3-08,40,20-00,6', '10.5,2.5,40,8,6'),
  });
  expect(venue.pegs[0]?.marginDepthMetres).toBeCloseTo(0.6096, 12);
  expect(venue.sessions[0]).toMatchObject({ weightGrams: 10_500, parts: { silvers: { weightGrams: 2500 } } });
});

test('fills what venue.md leaves out from the shipped settings', () => {
  const { settings } = smallCheckedVenue({
    [FILE.venue]: (text) => text.replace(/stand-off:.*\n/, '').replace(/permitted-reach:.*\n/, ''),
  });
  expect(settings.standOff).toEqual({ metres: 30, conductorSpreadMetres: 2, mapErrorMetres: 3 });
  expect(settings.permittedReach).toEqual({ poleMetres: 16, castMetres: 40, sectorDegrees: 120 });
  expect(settings.nestingMonths).toEqual([3, 4, 5, 6, 7, 8]);
  expect(settings.riskBands[0]?.from).toBe(1);
});
