import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readVenue } from '../../src/content/read-venue.ts';
import { FILE, faultsOf, messagesOf, replacing, smallCheckedVenue, smallVenue } from './small-venue.ts';

const paths = Object.values(FILE);

test('reads the same venue from files with a byte order mark and line ends of every kind', () => {
  const plain = smallCheckedVenue();
  const withEnds = (end: string) =>
    smallCheckedVenue(
      Object.fromEntries(paths.map((path) => [path, (text: string) => `\uFEFF${text.replaceAll('\n', end)}`])),
    );
  expect(withEnds('\r\n')).toEqual(plain);
  expect(withEnds('\r')).toEqual(plain);
  const mixed = smallCheckedVenue({ [FILE.sessions]: replacing('\n', '\r\n'), [FILE.peg]: replacing('\n', '\r\n') });
  expect(mixed).toEqual(plain);
});

test('gives the line a fault stands in, whatever the line ends', () => {
  const slip = (text: string) => text.replace('10 lb 4 oz', '10 lb 44 oz');
  const place = faultsOf({ [FILE.sessions]: slip });
  expect(faultsOf({ [FILE.sessions]: (text) => slip(text).replaceAll('\n', '\r\n') })).toEqual(place);
  expect(place[0]).toMatchObject({ line: 3, column: 43, rule: 'weight-ounces' });
});

test.each(paths)('tells of an empty %s', (path) => {
  const faults = faultsOf({ [path]: '' });
  expect(faults.some(({ file, severity }) => file === path && severity === 'error')).toBe(true);
});

test.each([
  ['Depths of the pond\ndepth,date,lat,lng\n', 2, 'Delete the line above the names of the columns.'],
  [
    'Depths;;;\n;;;\ndepth;date;lat;lng\n',
    3,
    'Delete the 2 lines above the names of the columns. Then save it as CSV with commas between the columns: it has semicolons.',
  ],
])('tells of a title above the names of the columns, once: %j', (text, line, mend) => {
  expect(faultsOf({ 'soundings/mill-pond.csv': text })).toMatchObject([
    {
      rule: 'csv-title',
      expected: `the names of the columns in the first line; they stand in line ${line}`,
      mend,
    },
  ]);
});

test('tells of semicolons from a spreadsheet, once', () => {
  expect(messagesOf({ [FILE.gauge]: (text) => text.replaceAll(',', ';') })).toMatchInlineSnapshot(`
    [
      "gauge/mill-pond.csv:1:1 error Unexpected semicolons between the columns, expected commas. A spreadsheet has saved it with semicolons. Save it as CSV again and choose the comma as the separator, with decimal points, not decimal commas. (csv-delimiter)",
    ]
  `);
});

test('tells of tabs from a spreadsheet, once', () => {
  expect(faultsOf({ [FILE.soundings]: (text) => text.replaceAll(',', '\t') }).map(({ rule }) => rule)).toEqual([
    'csv-delimiter',
  ]);
});

test('tells of a stray, a doubled, a nameless and a missing column', () => {
  const changes = { [FILE.gauge]: 'dat,level,level,,water_temp\n' };
  expect(messagesOf(changes)).toMatchInlineSnapshot(`
    [
      "gauge/mill-pond.csv:1:1 error Unexpected column "dat", expected one of date, level, water_temperature. Did you mean date? (column-unknown)",
      "gauge/mill-pond.csv:1:1 error Found no such column, expected a column date. Add it to the first line, and its cells to the rows. (column-missing)",
      "gauge/mill-pond.csv:1:11 error Unexpected column "level" a second time, expected each column once. Keep one of the two and delete the other. (column-duplicate)",
      "gauge/mill-pond.csv:1:17 error Unexpected column without a name, expected a name above each column. Delete the empty column, or name it. (column-unnamed)",
      "gauge/mill-pond.csv:1:18 error Unexpected column "water_temp", expected one of date, level, water_temperature. Delete the column, or move what it says to a column this guide reads. (column-unknown)",
    ]
  `);
});

test('tells of a row with a cell too many and one too few, and reads the others', () => {
  const { faults, counts } = readVenue(
    smallVenue({ [FILE.gauge]: (text) => `${text}2026-05-01,1\n2026-05-02,0.1,9,\n2026-05-03,0.1,9\n` }),
  );
  expect(faults.map(({ line, rule }) => [line, rule])).toEqual([
    [4, 'row-cells'],
    [5, 'row-cells'],
  ]);
  expect(counts.gaugeReadings).toBe(3);
});

test('leaves empty rows out and says so', () => {
  const { venue, leftOut } = readVenue(
    smallVenue({ [FILE.gauge]: (text) => `${text},,\n,,\n,,\n2026-11-13,0.1,8\n\n` }),
  );
  expect(venue?.gauge).toHaveLength(3);
  expect(leftOut).toEqual([
    { file: FILE.gauge, line: 4, what: '3 empty rows', why: 'There is nothing in it.' },
    { file: FILE.gauge, line: 8, what: 'an empty row', why: 'There is nothing in it.' },
  ]);
});

test('counts lines right behind a cell of several lines', () => {
  const note = (text: string) => `${text}visit,mill-pond,1,,,,,,,"two\nlines, one cell"\nvisit,mill-pond,77,,,,,,,\n`;
  expect(faultsOf({ [FILE.round]: note })).toMatchObject([{ line: 7, column: 17, rule: 'peg-unknown' }]);
});

test('tells of a quotation mark without its partner at the line it opens', () => {
  expect(faultsOf({ [FILE.sessions]: replacing('10 lb 4 oz', '"10 lb 4 oz') })).toMatchObject([
    { line: 3, rule: 'csv-quote-open' },
  ]);
});

test('tells of a field written twice', () => {
  expect(messagesOf({ [FILE.peg]: replacing('facing: 0', 'facing: 0\nfacing: 90') })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:5:9 warning Unexpected 0 for facing, expected a bearing with water within 10 m straight out. Take the bearing again, looking out over the float, or correct the position. (facing-away)",
      "pegs/mill-pond/1.md:6:1 error Unexpected "facing: 90", expected each field once. Keep one of the two lines and delete the other. (field-duplicate)",
    ]
  `);
});

test('tells of front matter that is missing or never closed', () => {
  expect(faultsOf({ [FILE.peg]: 'Just text.' })).toMatchObject([{ line: 1, rule: 'front-matter-missing' }]);
  expect(faultsOf({ [FILE.peg]: '---\npeg: "1"\n' })).toMatchObject([{ line: 3, rule: 'front-matter-unclosed' }]);
});

test('refuses anchors and aliases, and so a file that would unfold beyond measure', () => {
  const bomb = `a: &a [x, x]\n${'bcdefghij'
    .split('')
    .map((name, i) => `${name}: &${name} [*${'abcdefghi'[i]}, *${'abcdefghi'[i]}]`)
    .join('\n')}`;
  expect(faultsOf({ [FILE.peg]: replacing('facing: 0', `facing: 0\n${bomb}`) })).toMatchObject([
    { rule: 'yaml-shared', line: 6 },
  ]);
});

test('refuses a line of three points, behind which nothing would be read', () => {
  expect(messagesOf({ [FILE.peg]: replacing('hazards:', '...\nhazards:') })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:9:1 error Unexpected "hazards:", expected the rest of the fields, with no line of ... between them. Delete the line of three points: what follows it would not be read. (yaml-second)",
    ]
  `);
});

test('tells a tab once, not every stumble behind it', () => {
  const rules = faultsOf({ [FILE.peg]: replacing('    place:', '\tplace:') }).map(({ line, rule }) => [line, rule]);
  expect(rules[0]).toEqual([10, 'yaml-tab']);
  expect(rules.length).toBeLessThanOrEqual(3);
});

test('tells once of brackets nested by the thousand', () => {
  for (const bracket of ['[', '{', '[{']) {
    const rules = faultsOf({ [FILE.peg]: replacing('[corner]', bracket.repeat(30_000)) }).map(({ rule }) => rule);
    expect(rules).toEqual(['yaml-depth']);
  }
});

test('tells of a control character', () => {
  expect(messagesOf({ [FILE.peg]: (text) => `${text}\u0000` })).toMatchInlineSnapshot(`
    [
      "pegs/mill-pond/1.md:22:1 error Unexpected control character U+0000, expected text. Delete it, or save the file again as UTF-8 text from the program that made it. (file-characters)",
    ]
  `);
});

test('reads values as they are written: no octal, no yes for true, no number for a telephone', () => {
  const venue = smallCheckedVenue({ [FILE.venue]: replacing('number: "999"', 'number: 0999') });
  expect(venue.settings.emergency.number).toBe('0999');
  expect(faultsOf({ [FILE.venue]: replacing('invented: true', 'invented: yes') })).toMatchObject([
    { rule: 'true-false', found: '"yes"' },
  ]);
});

test('reads a field without a value as one left out', () => {
  const venue = smallCheckedVenue({ [FILE.peg]: replacing('facing: 0', 'where:\nfacing: 0') });
  expect(venue.pegs[0]).not.toHaveProperty('where');
  expect(faultsOf({ [FILE.peg]: replacing('status: open', 'status:') })).toMatchObject([
    { rule: 'field-missing', field: 'status', line: 7 },
  ]);
});

test('gathers the faults of many files in one run, in order of file and line', () => {
  const faults = faultsOf({
    [FILE.peg]: replacing('facing: 0', 'facing: deep'),
    'pegs/mill-pond/10.md': replacing('status: open', 'status: opened'),
    [FILE.sessions]: replacing('23-08', '23-17'),
    [FILE.map]: replacing('"kind":"gate"', '"kind":"gaet"'),
    [FILE.venue]: replacing('distance: 30 m', 'distance: 25 m'),
  });
  expect(faults.map(({ file, rule }) => `${file} ${rule}`)).toEqual([
    'pegs/mill-pond/1.md bearing',
    'pegs/mill-pond/10.md field-word',
    'sessions/2026/sessions.csv weight-ounces',
    'venue.md stand-off-minimum',
    'waters/mill-pond.geojson map-kind',
  ]);
});

test('never throws, whatever stands in a file', () => {
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.string({ unit: 'binary', maxLength: 300 }), (path, text) => {
      expect(readVenue(smallVenue({ [path]: text })).venue).toBeNull();
    }),
    { numRuns: 150 },
  );
});

test('never throws, whatever is put into the middle of a good file', () => {
  const piece = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 40 }),
    fc.constantFrom('"', '\n', ',', '[', '{', ': ', '- ', '&', '*', '!', '---\n', '\u0000', '\uFEFF'),
  );
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.nat(2000), fc.nat(20), piece, (path, at, cut, text) => {
      const changed = (whole: string) =>
        whole.slice(0, at % whole.length) + text + whole.slice((at % whole.length) + cut);
      for (const { line, column, mend } of faultsOf({ [path]: changed })) {
        expect(line).toBeGreaterThanOrEqual(1);
        expect(column).toBeGreaterThanOrEqual(1);
        expect(mend).not.toBe('');
      }
    }),
    { numRuns: 300 },
  );
});
