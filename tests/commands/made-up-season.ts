import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { GRAMS_PER_OUNCE } from '../../src/domain/weight.ts';
import { workbook } from '../content/papers/result-papers.ts';

/** Two waters of a made-up club, by name, and how many pegs each has. */
const SEASON_WATERS = { 'Long Pool': 26, 'The Mere': 12 } as const;
type WaterName = keyof typeof SEASON_WATERS;

/** What the sheets of a season leave unsaid. */
export const SEASON_ANSWERS = {
  listing: 'full',
  places: '1',
  hours: '5',
  'mark DNW': 'dnw',
  'mark DQ': 'disqualified',
  'mark DNS': 'absent',
} as const;

/** What `start` is answered for the venue of a season. */
export const VENUE_ANSWERS = {
  name: 'Alder Lakes',
  club: 'Alder Vale Angling Society',
  waters: Object.keys(SEASON_WATERS).join(', '),
  lengths: 'm',
  weights: 'lb',
  parts: 'none',
  'overhead lines': 'not-looked',
  ...Object.fromEntries(Object.entries(SEASON_WATERS).map(([name, pegs]) => [`pegs of ${name}`, String(pegs)])),
};

/** Invented people, of names that are no part of any other word: no two surnames sound alike, so that one person is told from another. */
const PEOPLE = [
  'Arquemby Abzorrin',
  'Blenwick Blimquist',
  'Cavroth Crovanth',
  'Dulfric Drellowax',
  'Embrelin Ezmorick',
  'Forswith Fruthnag',
  'Galdemar Glozzim',
  'Hurvath Hibbertwane',
  'Ivorlend Ixleforde',
  'Jubriel Jasporril',
  'Korvane Kremdolt',
  'Luthbert Lobquith',
  'Mordwen Mistrovane',
  'Nilvorth Nuzzendorf',
  'Osgrith Oxpliven',
  'Pelvoran Prathmoor',
  'Quendrix Quelbrick',
  'Rolvaren Rondwhim',
  'Selquith Sprithwen',
  'Torvembe Tuckmarrow',
] as const;

interface MadeUpRow {
  readonly person: number;
  readonly peg: string;
  readonly status: 'weighed' | 'dnw' | 'disqualified' | 'absent';
  /** Of a weighed row; a whole number of ounces or of grams, as its sheet writes it. */
  readonly amount: number;
  readonly spelling: number;
}

interface MadeUpSheet {
  readonly day: string;
  readonly water: WaterName;
  readonly rows: readonly MadeUpRow[];
  readonly style: 'hyphen' | 'words' | 'slash' | 'two-columns' | 'kilograms' | 'nets';
  readonly layout: ',' | ';' | '\t' | 'xlsx' | 'ods';
  readonly lineEnd: '\n' | '\r\n';
  readonly hasWaterColumn: boolean;
  readonly hasSections: boolean;
  readonly hasTotal: boolean;
}

/** A row as the log must hold it. */
export interface ExpectedSession {
  readonly day: string;
  readonly water: string;
  readonly peg: string;
  readonly status: string;
  readonly section: string | null;
  readonly grams: number | null;
  readonly person: number;
}

/** A season of result sheets, and what must come of them. */
export interface MadeUpSeason {
  readonly papers: readonly { readonly file: string; readonly bytes: Uint8Array }[];
  readonly sessions: readonly ExpectedSession[];
}

const sheet: fc.Arbitrary<Omit<MadeUpSheet, 'day'>> = fc
  .record({
    water: fc.constantFrom<WaterName>('Long Pool', 'The Mere'),
    style: fc.constantFrom<MadeUpSheet['style']>('hyphen', 'words', 'slash', 'two-columns', 'kilograms', 'nets'),
    layout: fc.constantFrom<MadeUpSheet['layout']>(',', ';', '\t', 'xlsx', 'ods'),
    lineEnd: fc.constantFrom<MadeUpSheet['lineEnd']>('\n', '\r\n'),
    hasWaterColumn: fc.boolean(),
    hasSections: fc.boolean(),
    hasTotal: fc.boolean(),
  })
  .chain((form) => {
    const pegs = Array.from({ length: SEASON_WATERS[form.water] }, (_, index) => String(index + 1));
    const row = fc.record({
      status: fc.constantFrom<MadeUpRow['status']>(
        'weighed',
        'weighed',
        'weighed',
        'weighed',
        'dnw',
        'disqualified',
        'absent',
      ),
      amount: fc.integer({ min: 1, max: 4000 }),
      spelling: fc.nat({ max: SPELLINGS.length - 1 }),
    });
    return fc
      .tuple(
        fc.shuffledSubarray([...PEOPLE.keys()], { minLength: 1, maxLength: 12 }),
        fc.shuffledSubarray(pegs, { minLength: 12, maxLength: 12 }),
        fc.array(row, { minLength: 12, maxLength: 12 }),
      )
      .map(([people, drawn, rows]) => ({
        ...form,
        rows: people.map((person, index) => ({ ...rows[index]!, person, peg: drawn[index]! })),
      }));
  });

/** Seasons of one to five sheets, each of a day of its own. */
export const madeUpSeason: fc.Arbitrary<MadeUpSeason> = fc
  .array(sheet, { minLength: 1, maxLength: 5 })
  .map((sheets) => {
    const dated = sheets.map((one, index) => ({ ...one, day: `2026-0${index + 4}-1${index}` }));
    return {
      papers: dated.map((one, index) => ({ file: `match-${index + 1}`, bytes: written(one) })),
      sessions: dated.flatMap((one) =>
        one.rows.map(({ person, peg, status, amount }) => ({
          day: one.day,
          water: one.water.toLowerCase().replace(' ', '-'),
          peg,
          status,
          section: one.hasSections ? sectionOf(peg) : null,
          grams: status !== 'weighed' ? null : one.style === 'kilograms' ? amount : amount * GRAMS_PER_OUNCE,
          person,
        })),
      ),
    };
  });

/** The ways in which one hand or another writes a name. */
const SPELLINGS: readonly ((first: string, last: string) => string)[] = [
  (first, last) => `${first} ${last}`,
  (first, last) => `${last}, ${first}`,
  (first, last) => `${first} ${last}`.toUpperCase(),
  (first, last) => `${first[0]} ${last}`,
  (first, last) => `${first[0]}. ${last}`,
  (first, last) => `Mr ${first} ${last}`,
  (first, last) => `${first} ${last} (J)`,
  (first, last) => `${first.replace('e', 'é')}  ${last.replace('o', 'ö')}`,
];

const sectionOf = (peg: string): string => (Number(peg) % 2 === 0 ? 'A' : 'B');

function written(made: MadeUpSheet): Uint8Array {
  const { style, hasWaterColumn, hasSections } = made;
  const weightHeads = { 'two-columns': ['lb', 'oz'], nets: ['Net 1', 'Net 2'], kilograms: ['Weight kg'] };
  const heads = [
    ...(hasWaterColumn ? ['Water'] : []),
    'Peg',
    'Name',
    ...(hasSections ? ['Section'] : []),
    ...(style in weightHeads ? weightHeads[style as keyof typeof weightHeads] : ['Weight']),
  ];
  const rows = made.rows.map((row) => {
    const [first = '', last = ''] = PEOPLE[row.person]!.split(' ');
    return [
      ...(hasWaterColumn ? [made.water] : []),
      row.peg,
      SPELLINGS[row.spelling]!(first, last),
      ...(hasSections ? [sectionOf(row.peg)] : []),
      ...(row.status === 'weighed' ? weightCells(row.amount, style) : markCells(row.status, style)),
    ];
  });
  const sum = made.rows.reduce((all, { status, amount }) => all + (status === 'weighed' ? amount : 0), 0);
  const [winner] = made.rows;
  const all = [
    // A cup may be called after somebody, and a sheet thanks those who helped.
    [`${hasWaterColumn ? 'Summer series' : made.water}, the ${PEOPLE[0]} Cup`],
    [made.day],
    heads,
    ...rows,
    ...(made.hasTotal && style !== 'nets' && sum > 0 ? [totalRow(heads, sum, style)] : []),
    [],
    [`Well fished ${PEOPLE[winner!.person]}, and thanks to ${PEOPLE[1]} for the scales`],
  ];
  if (made.layout === 'xlsx' || made.layout === 'ods') return workbook({ Results: all }, () => {}, made.layout);
  const quoted = (cell: string): string => (/[",;\t]/.test(cell) ? `"${cell}"` : cell);
  return new TextEncoder().encode(all.map((row) => row.map(quoted).join(made.layout)).join(made.lineEnd));
}

function totalRow(heads: readonly string[], sum: number, style: MadeUpSheet['style']): readonly string[] {
  const cells = weightCells(sum, style);
  return ['Total', ...Array.from({ length: heads.length - 1 - cells.length }, () => ''), ...cells];
}

function weightCells(amount: number, style: MadeUpSheet['style']): readonly string[] {
  const [pounds, ounces] = [Math.floor(amount / 16), amount % 16];
  if (style === 'kilograms') return [`${Math.floor(amount / 1000)}.${String(amount % 1000).padStart(3, '0')}`];
  if (style === 'two-columns') return [String(pounds), String(ounces)];
  if (style === 'nets') return amount < 16 ? [`0-${amount}`, ''] : [`${pounds}-0`, ounces === 0 ? '' : `0-${ounces}`];
  if (style === 'hyphen') return [`${pounds}-${String(ounces).padStart(2, '0')}`];
  return [style === 'words' ? `${pounds}lb ${ounces}oz` : `${pounds}/${ounces}`];
}

function markCells(status: MadeUpRow['status'], style: MadeUpSheet['style']): readonly string[] {
  const mark = { weighed: '', dnw: 'DNW', disqualified: 'DQ', absent: 'DNS' }[status];
  return style === 'two-columns' || style === 'nets' ? [mark, ''] : [mark];
}

/** Files below a folder in which a name of these people stands, unpacked where they are packed; the name itself too. */
export function filesWithNames(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true }).flatMap((entry) => {
    if (!entry.isFile()) return [];
    const path = join(entry.parentPath, entry.name);
    const bytes = readFileSync(path);
    const isPacked = bytes[0] === 0x1f && bytes[1] === 0x8b;
    const text = `${entry.name}\n${(isPacked ? gunzipSync(bytes) : bytes).toString('utf8')}`;
    const plain = text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase();
    return NEEDLES.filter((needle) => plain.includes(needle)).map((needle) => `${path}: ${needle}`);
  });
}

const NEEDLES = PEOPLE.flatMap((name) => name.toLowerCase().split(' '));
