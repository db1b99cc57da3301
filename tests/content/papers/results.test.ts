import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Asker } from '../../../src/content/papers/questions.ts';
import { readPaper } from '../../../src/content/papers/read-paper.ts';
import { readResults, type VenueNames } from '../../../src/content/papers/results/read-results.ts';
import { parseWeight } from '../../../src/domain/weight.ts';
import { kept, RESULT_PAPERS, workbook } from './result-papers.ts';

const VENUE: VenueNames = {
  waters: [
    { id: 'kiln-pool', name: 'Kiln Pool', pegs: new Set(Array.from({ length: 40 }, (_, i) => String(i + 1))) },
    { id: 'long-lake', name: 'Long Lake', pegs: new Set(['1', '2', '3']) },
  ],
  bagParts: [
    { id: 'silvers', name: 'Silvers', species: ['roach', 'skimmer'] },
    { id: 'carp', name: 'Carp', species: ['common carp'] },
  ],
  usualHours: new Map(),
};

function read(file: string, bytes: Uint8Array, answers: Readonly<Record<string, string>>) {
  const paper = readPaper(file, bytes);
  if (!paper.ok) throw new Error(paper.fault.found);
  const asker = new Asker(kept(answers));
  return { ...readResults(paper.paper, VENUE, asker), asker };
}

describe('result sheets in the layouts of clubs', () => {
  it.each(RESULT_PAPERS)('reads $name', ({ file, bytes, answers, rows, day, waters }) => {
    const { matches, asker } = read(file, bytes, answers);
    expect(asker.open).toEqual([]);
    expect(matches).toHaveLength(1);
    expect(matches[0]!.day).toBe(day);
    expect([...new Set(matches[0]!.rows.map(({ water }) => water))]).toEqual(waters);
    expect(
      matches[0]!.rows.map((row) => `${row.peg} ${row.status} ${row.weight?.written ?? '-'} ${row.section ?? '-'}`),
    ).toEqual(rows);
  });

  it.each(RESULT_PAPERS)('asks rather than guesses where nothing is answered yet: $name', ({ file, bytes }) => {
    const { matches, asker } = read(file, bytes, {});
    expect(matches).toEqual([]);
    expect(asker.open.length).toBeGreaterThan(0);
  });

  it('reads parts and counts of fish', () => {
    const kilos = RESULT_PAPERS.find(({ file }) => file === 'kilos.csv')!;
    expect(read(kilos.file, kilos.bytes, kilos.answers).matches[0]!.rows[0]!.parts).toEqual({
      carp: { written: '5.2 kg' },
    });
    const two = RESULT_PAPERS.find(({ file }) => file === 'two-waters.ods')!;
    expect(read(two.file, two.bytes, two.answers).matches[0]!.rows[0]!.parts).toEqual({ carp: { count: 3 } });
  });

  it('says of a formula that was never worked out how to mend it', () => {
    const numbers = RESULT_PAPERS.find(({ file }) => file === 'numbers.xlsx')!;
    expect(read(numbers.file, numbers.bytes, numbers.answers).unread).toContainEqual({
      place: 'numbers.xlsx, Sheet1, row 5',
      what: 'peg 3',
      why: 'a formula whose value was never worked out: open the workbook in a spreadsheet program and save it',
    });
  });

  it('asks where the rows do not come to the total of the sheet', () => {
    const { asker } = read(
      'sum.csv',
      new TextEncoder().encode(
        'Kiln Pool 2026-07-05\nPeg,Name,Weight\n1,Ada Quill,3-00\n2,Bo Reed,4-00\nTotal,,7-08\n',
      ),
      { listing: 'full', places: '1', hours: '5' },
    );
    expect(asker.open.map(({ key, evidence }) => [key, evidence])).toEqual([
      ['total 1', ['the rows come to 3.175 kg, row 5 says 3.402 kg']],
    ]);
  });

  it('asks where places and weights do not agree', () => {
    const { asker } = read(
      'places.csv',
      new TextEncoder().encode('Kiln Pool 2026-07-05\nPos,Peg,Name,Weight\n1,1,Ada Quill,3-00\n2,2,Bo Reed,4-00\n'),
      { listing: 'full', places: '1', hours: '5' },
    );
    expect(asker.open.map(({ key }) => key)).toEqual(['places and weights']);
  });

  it('lists a peg that the water does not have, a vacant peg and a row without a peg', () => {
    const { unread, matches } = read(
      'odd.csv',
      new TextEncoder().encode(
        'Kiln Pool 2026-07-05\nPeg,Name,Weight\n77,Ada Quill,3-00\n2,,\n?,Cy Sedge,4-00\n3,Di Teal,2-00\n',
      ),
      { listing: 'full', places: '1', hours: '5' },
    );
    expect(matches[0]!.rows.map(({ peg }) => peg)).toEqual(['3']);
    expect(unread.map(({ why }) => why).sort()).toEqual([
      expect.stringMatching(/^2 rows of it could not be read, so it goes in as one that lists some/),
      'Kiln Pool has no peg 77',
      'no angler and no weight: nobody drew it',
      'no peg in it ("?")',
    ]);
  });
});

describe('a paper that lists everybody', () => {
  const answers = { listing: 'full', places: '1', hours: '5' };
  const match = (...rows: readonly string[]) =>
    read('rows.csv', new TextEncoder().encode(`Kiln Pool 2026-07-05\nPeg,Name,Weight\n${rows.join('\n')}\n`), answers)
      .matches[0]!;

  it.each([
    ['a weight that is none', '5,Ed Rush,3-0x'],
    ['no peg beside a weight', '?,Ed Rush,3-00'],
    ['a peg the water has not', '77,Ed Rush,3-00'],
  ])('is none of everybody with a row of %s', (_, row) => {
    const { listing, fished, rows } = match('1,Ada Quill,3-00', row, '3,Di Teal,2-00');
    expect(rows).toHaveLength(2);
    expect({ listing, fished }).toEqual({ listing: 'frame', fished: 3 });
  });

  it('stays one of everybody with an empty peg and a remark under it', () => {
    const { listing, fished } = match('1,Ada Quill,3-00', '2,,', '3,Di Teal,2-00', 'Next match in August,,');
    expect({ listing, fished }).toEqual({ listing: 'full', fished: null });
  });
});

describe('papers that are none', () => {
  it('refuses a damaged workbook, a picture and a file that unpacks without end', () => {
    const whole = workbook({ Sheet1: [['Peg', 'Weight']] });
    expect(readPaper('cut.xlsx', whole.subarray(0, whole.length - 40))).toMatchObject({ ok: false });
    expect(readPaper('photo.jpg', Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 0, 0, 0]))).toMatchObject({ ok: false });
  });
});

/** Weights as ounces, so that a sum has an exact truth. */
const ounces = fc.integer({ min: 1, max: 16 * 300 });
const sheetRow = fc.record({
  ounces: fc.option(ounces, { nil: null, freq: 5 }),
  style: fc.constantFrom('hyphen', 'words', 'slash'),
});

function weightText(total: number, style: string): string {
  const [lb, oz] = [Math.floor(total / 16), total % 16];
  if (style === 'hyphen') return `${lb}-${String(oz).padStart(2, '0')}`;
  return style === 'words' ? `${lb}lb ${oz}oz` : `${lb}/${oz}`;
}

describe('any sheet', () => {
  it('loses no row, invents none and keeps totals to the gram', () => {
    fc.assert(
      fc.property(
        fc.array(sheetRow, { minLength: 1, maxLength: 30 }),
        fc.constantFrom(';', '\t', ',', '|'),
        fc.constantFrom('\n', '\r\n', '\r'),
        fc.boolean(),
        (rows, delimiter, lineEnd, isWorkbook) => {
          const cells = rows.map(({ ounces, style }, index) => [
            String(index + 1),
            `Angler ${String.fromCharCode(65 + (index % 26))}${index}`,
            ounces === null ? 'DNW' : weightText(ounces, style),
          ]);
          const sum = rows.reduce((grams, row) => grams + (row.ounces ?? 0), 0);
          const all = [
            ['Kiln Pool 5 July 2026', '', ''],
            ['Peg', 'Name', 'Weight'],
            ...cells,
            ['Total', '', weightText(sum, 'hyphen')],
          ];
          const bytes = isWorkbook
            ? workbook({ R: all })
            : new TextEncoder().encode(all.map((row) => row.join(delimiter)).join(lineEnd));
          const { matches, unread, asker } = read('any', bytes, {
            listing: 'full',
            places: '1',
            hours: '5',
            'mark DNW': 'dnw',
          });
          expect(asker.open).toEqual([]);
          expect(unread).toEqual([]);
          const read_ = matches.flatMap((match) => match.rows);
          expect(read_.map(({ peg }) => peg)).toEqual(cells.map(([peg]) => peg));
          const grams = read_.map(({ weight }) => {
            const parsed = weight === null ? null : parseWeight(weight.written, 'lb');
            return parsed === null ? null : parsed.ok ? parsed.value : Number.NaN;
          });
          rows.forEach((row, index) => {
            if (row.ounces === null) expect(grams[index]).toBeNull();
            else expect(grams[index]!).toBeCloseTo((row.ounces * 453.59237) / 16, 6);
          });
        },
      ),
      { numRuns: 60 },
    );
  });
});
