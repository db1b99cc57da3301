import * as XLSX from '@e965/xlsx';
import { type KeptAnswers, NO_ANSWERS } from '../../../src/content/papers/questions.ts';

/**
 * Result sheets in the layouts that clubs use, invented names and figures throughout (common practice of the trade, no
 * source). Half are real workbooks, written by the library that reads them.
 */
export interface ResultPaper {
  readonly name: string;
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly answers: Readonly<Record<string, string>>;
  /** What must come out: peg, status, weight as the log writes it, section. */
  readonly rows: readonly string[];
  readonly day: string;
  readonly waters: readonly string[];
}

const BASE = { listing: 'full', places: '2', hours: '5' };

export function kept(all: Readonly<Record<string, string>>): KeptAnswers {
  return { ...NO_ANSWERS, all };
}

type Row = readonly (string | number | Date | null)[];

/** A workbook of one sheet or several. */
export function workbook(
  sheets: Readonly<Record<string, readonly Row[]>>,
  edit: (sheets: Readonly<Record<string, XLSX.WorkSheet>>, book: XLSX.WorkBook) => void = () => {},
  bookType: XLSX.BookType = 'xlsx',
): Uint8Array {
  const book = XLSX.utils.book_new();
  const made: Record<string, XLSX.WorkSheet> = {};
  for (const [name, rows] of Object.entries(sheets)) {
    made[name] = XLSX.utils.aoa_to_sheet(rows.map((row) => [...row]));
    XLSX.utils.book_append_sheet(book, made[name], name);
  }
  edit(made, book);
  return new Uint8Array(XLSX.write(book, { type: 'array', bookType }) as ArrayBuffer);
}

const text = (content: string): Uint8Array => new TextEncoder().encode(content);

/** Excel's count of days from 1900 (serial 1 is 1 January 1900; the count holds a 29 February 1900 that never was). */
const SERIAL_12_JULY_2026 = 46215;

export const RESULT_PAPERS: readonly ResultPaper[] = [
  {
    name: 'semicolons, titles above, a row of totals and points',
    file: 'open.csv',
    bytes: text(
      'Kiln Pool Open;;;;;\nSunday 12th July 2026;;;;;\n;;;;;\nPos;Peg;Name;Section;Weight;Pts\n1;3;Ada Quill;A;23-08;1\n2;5;Bo Reedmace;A;12lb 4oz;2\n3;7;Cy Sedge;B;DNW;3\n;;;TOTAL;35-12;\n',
    ),
    answers: { ...BASE, 'mark DNW': 'dnw' },
    rows: ['3 weighed 23-08 A', '5 weighed 12-04 A', '7 dnw - B'],
    day: '2026-07-12',
    waters: ['kiln-pool'],
  },
  {
    name: 'pounds and ounces in two columns, with units below a heading',
    file: 'pair.csv',
    bytes: text(
      'Kiln Pool 3/5/26\nPeg,Angler,Weight,\n,,lb,oz\n2,D Fen,7,15\n4,E Gravel,0,0\n6,F Hatch,104,3\nTotal,,112,2\n',
    ),
    answers: { ...BASE, 'mark 0': 'blank' },
    rows: ['2 weighed 7-15 -', '4 blank - -', '6 weighed 104-03 -'],
    day: '2026-05-03',
    waters: ['kiln-pool'],
  },
  {
    name: 'bare decimals that are pounds and ounces',
    file: 'points.csv',
    bytes: text('Kiln Pool,,1 June 2026\nSwim,Name,Wt\n1,Gil Ide,12.14\n2,Hal Jetty,8.3\n3,Ivy Keepnet,10.08\n'),
    answers: { ...BASE, decimals: 'pounds-ounces' },
    rows: ['1 weighed 12-14 -', '2 weighed 8-03 -', '3 weighed 10-08 -'],
    day: '2026-06-01',
    waters: ['kiln-pool'],
  },
  {
    name: 'kilograms with a decimal comma, split by semicolons, in an old encoding',
    file: 'kilos.csv',
    bytes: Uint8Array.from(
      Buffer.from(
        'Kiln Pool 2026-06-07\nPeg;Name;Weight kg;Carp kg\n1;Zoë Larch;7,43;5,2\n2;Jo Mère;0,850;0\n',
        'latin1',
      ),
    ),
    answers: BASE,
    rows: ['1 weighed 7.43 kg -', '2 weighed 0.850 kg -'],
    day: '2026-06-07',
    waters: ['kiln-pool'],
  },
  {
    name: 'pasted from a message, columns by blanks',
    file: 'pasted.txt',
    bytes: text(
      'Kiln Pool 14 June 2026\n\nPeg   Name          Weight\n4     Kit Nettle    6-02\n8     Lou Osier     -\n',
    ),
    answers: { ...BASE, 'mark -': 'dnw' },
    rows: ['4 weighed 6-02 -', '8 dnw - -'],
    day: '2026-06-14',
    waters: ['kiln-pool'],
  },
  {
    name: 'sections below one another, each with its own headings',
    file: 'sections.csv',
    bytes: text(
      'Kiln Pool,21 June 2026,\nSection A,,\nPeg,Name,Weight\n1,Max Pike,3-01\n2,Nan Quay,2-00\n\nSection B,,\nPeg,Name,Weight\n3,Oz Rudd,9-09\n',
    ),
    answers: BASE,
    rows: ['1 weighed 3-01 A', '2 weighed 2-00 A', '3 weighed 9-09 B'],
    day: '2026-06-21',
    waters: ['kiln-pool'],
  },
  {
    name: 'workbook with a merged title and a date as a number',
    file: 'merged.xlsx',
    bytes: workbook(
      {
        Results: [
          ['Kiln Pool', null, null],
          [null, null, null],
          ['Peg', 'Name', 'Weight'],
          [9, 'Pat Swale', '11-11'],
          [10, 'Quin Tarn', '4-00'],
        ],
      },
      ({ Results }) => {
        Results!['!merges'] = [{ s: { r: 0, c: 0 }, e: { r: 0, c: 2 } }];
        Results!.A2 = { t: 'n', v: SERIAL_12_JULY_2026, z: 'dd/mm/yyyy' };
      },
    ),
    answers: BASE,
    rows: ['9 weighed 11-11 -', '10 weighed 4-00 -'],
    day: '2026-07-12',
    waters: ['kiln-pool'],
  },
  {
    name: 'workbook that counts days from 1904',
    file: 'mac.xlsx',
    bytes: workbook(
      { Sheet1: [['Kiln Pool'], [null], ['Peg', 'Name', 'Weight'], [9, 'Pat Swale', '11-11']] },
      ({ Sheet1 }, book) => {
        // 1,462 days lie between the two beginnings (ECMA-376 part 1, 18.17.4.1).
        Sheet1!.A2 = { t: 'n', v: SERIAL_12_JULY_2026 - 1462, z: 'dd/mm/yyyy' };
        book.Workbook = { WBProps: { date1904: true } };
      },
    ),
    answers: BASE,
    rows: ['9 weighed 11-11 -'],
    day: '2026-07-12',
    waters: ['kiln-pool'],
  },
  {
    name: 'workbook in which weights became dates',
    file: 'dates.xlsx',
    bytes: workbook(
      {
        Sheet1: [
          ['Kiln Pool 19/07/2026'],
          ['Peg', 'Name', 'Weight'],
          [1, 'Ron Umber', null],
          [2, 'Sue Vetch', '14-09'],
        ],
      },
      ({ Sheet1 }) => {
        // 4-05 typed into a cell of a British spreadsheet: 4 May.
        Sheet1!.C3 = { t: 'n', v: 46146, z: 'd-mmm' };
      },
    ),
    answers: { ...BASE, 'weights as dates': 'pounds-ounces' },
    rows: ['1 weighed 4-05 -', '2 weighed 14-09 -'],
    day: '2026-07-19',
    waters: ['kiln-pool'],
  },
  {
    name: 'workbook with two tables side by side and hidden rows',
    file: 'sides.xlsx',
    bytes: workbook(
      {
        Sheet1: [
          ['Kiln Pool 26/07/2026'],
          ['Peg', 'Name', 'Weight', null, 'Peg', 'Name', 'Weight'],
          [1, 'Tam Wader', '5-05', null, 11, 'Uma Yarrow', '6-06'],
          [2, 'Val Zander', '1-01', null, 12, 'Wes Alder', '7-07'],
        ],
      },
      ({ Sheet1 }) => {
        Sheet1!['!rows'] = [{}, {}, {}, { hidden: true }];
      },
    ),
    answers: { ...BASE, 'hidden rows': 'leave' },
    rows: ['1 weighed 5-05 -', '11 weighed 6-06 -'],
    day: '2026-07-26',
    waters: ['kiln-pool'],
  },
  {
    name: 'open document sheet over two waters with a column for the water, nets and a count of fish',
    file: 'two-waters.ods',
    bytes: workbook(
      {
        Results: [
          ['August Bank Holiday, 31 August 2026'],
          ['Water', 'Peg', 'Name', 'Net 1', 'Net 2', 'Carp no'],
          ['Kiln Pool', 1, 'Xan Birch', '20-00', '4-08', 3],
          ['Long Lake', 1, 'Yve Carr', '6-00', null, 0],
        ],
      },
      () => {},
      'ods',
    ),
    answers: BASE,
    rows: ['1 weighed 11.113013 kg -', '1 weighed 6-00 -'],
    day: '2026-08-31',
    waters: ['kiln-pool', 'long-lake'],
  },
  {
    name: 'workbook of numbers whose noughts were dropped, and a formula nobody worked out',
    file: 'numbers.xlsx',
    bytes: workbook(
      {
        Sheet1: [
          ['Kiln Pool 2/8/2026'],
          ['Peg', 'Name', 'Weight'],
          [1, 'Zed Dyke', 23.1],
          [2, 'Amy Eyot', 8.12],
          [3, 'Ben Ford', null],
        ],
      },
      ({ Sheet1 }) => {
        Sheet1!.C5 = { t: 'z', f: 'A1+B1' } as XLSX.CellObject;
        Sheet1!['!ref'] = 'A1:C5';
      },
    ),
    answers: { ...BASE, decimals: 'pounds-ounces', 'point one': 'ten' },
    rows: ['1 weighed 23-10 -', '2 weighed 8-12 -'],
    day: '2026-08-02',
    waters: ['kiln-pool'],
  },
];
