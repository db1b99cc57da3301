/**
 * The lengths a bailiff measures at a peg: each declared here once. A record's `clearance`, the columns of a round, the round file,
 * the form on the phone, the sheet to fill by hand, the merge into the record and the history of a peg follow this list.
 */
export const CLEARANCE_MEASURES = [
  {
    field: 'clearWidthMetres',
    key: 'clear-width',
    column: 'clear_width',
    name: 'clear width',
    short: 'width',
    about: 'clear width of the swim',
    maxMetres: 100,
    example: '4 m',
    onSheet: 'alone',
    isInEveryRound: true,
  },
  {
    field: 'lowestBranchMetres',
    key: 'lowest-branch',
    column: 'lowest_branch',
    name: 'lowest branch',
    short: 'branch',
    about: 'height of the lowest branch',
    maxMetres: 50,
    example: '3.2 m',
    onSheet: 'named',
    isInEveryRound: true,
  },
  {
    field: 'pathWidthMetres',
    key: 'path-width',
    column: 'path_width',
    name: 'path width',
    short: 'path',
    about: 'clear width of the path',
    maxMetres: 20,
    example: '1.1 m',
    onSheet: 'with-path',
    isInEveryRound: true,
  },
] as const satisfies readonly ClearanceMeasure[];

/** One length that is measured at a peg. */
interface ClearanceMeasure {
  /** What code calls it. */
  readonly field: `${string}Metres`;
  /** Under `clearance` in a record, and as a control of the form. */
  readonly key: string;
  /** In the CSV file of a round. */
  readonly column: string;
  /** On the form and on the sheet. */
  readonly name: string;
  /** At the head of a narrow column. */
  readonly short: string;
  /** In schemas and faults. */
  readonly about: string;
  /** More than this is a slip of the unit. */
  readonly maxMetres: number;
  /** In the example record of a new venue. */
  readonly example: string;
  /** Whether every round's file has its column: else one has it only where a row fills it, and older rounds stay as they are. */
  readonly isInEveryRound: boolean;
  /** On a peg's sheet: as the width of the swim, with its name beside that, or where the path is told. */
  readonly onSheet: 'alone' | 'named' | 'with-path';
}

type Measure = (typeof CLEARANCE_MEASURES)[number];
export type ClearanceField = Measure['field'];
export type ClearanceKey = Measure['key'];
export type ClearanceColumn = Measure['column'];

/** What was measured of a peg's clearance; what was not is left out. */
export type MeasuredClearance = { readonly [Field in ClearanceField]?: number };

/** A record with an entry for every measure, or for those wanted, in their order. */
export function byMeasure<Name extends string, Value>(
  entryOf: (measure: Measure) => readonly [Name, Value],
  isWanted: (measure: ClearanceMeasure) => boolean = () => true,
): Readonly<Record<Name, Value>> {
  return Object.fromEntries(CLEARANCE_MEASURES.filter(isWanted).map(entryOf)) as Record<Name, Value>;
}

/** The measures of a thing that has them among other fields: those it lacks are left out. */
export function measuredOf(thing: MeasuredClearance): MeasuredClearance {
  return Object.fromEntries(
    CLEARANCE_MEASURES.flatMap(({ field }) => (thing[field] === undefined ? [] : [[field, thing[field]]])),
  );
}
