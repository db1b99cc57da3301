import { byMeasure, CLEARANCE_MEASURES } from '../../domain/clearance-measures.ts';
import { pegKey } from '../../domain/peg.ts';
import type { RoundEntry, RoundEntryKind } from '../../domain/round.ts';
import type { Content } from '../content.ts';
import { listed } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Source } from '../sources/source.ts';
import { unknownPegName } from './session-names.ts';
import { type UnknownName, unknownName } from './unknown-name.ts';

/** What each kind of row must hold besides its water; of several columns at least one. */
const NEEDS: Readonly<Record<RoundEntryKind, readonly (readonly (keyof typeof COLUMN_OF)[])[]>> = {
  visit: [['peg', 'mappedAs']],
  inspected: [['peg'], ['platform']],
  'hazard-found': [['hazard'], ['place'], ['severity'], ['likelihood']],
  'hazard-checked': [['hazard']],
  'hazard-worsened': [['hazard'], ['severity'], ['likelihood']],
  'hazard-controlled': [['hazard'], ['control']],
  'hazard-cleared': [['hazard']],
  clearance: [['peg'], CLEARANCE_MEASURES.map(({ field }) => field)],
  'snag-removed': [['peg']],
  cut: [['peg']],
  'line-distance': [['peg'], ['lineDistanceMetres']],
  'kit-checked': [['mappedAs'], ['kit']],
  closing: [['why']],
  notice: [['title']],
  note: [['note']],
  gauge: [['levelMetres', 'waterDegreesC']],
};

const COLUMN_OF = {
  peg: 'peg',
  hazard: 'hazard',
  place: 'place',
  severity: 'severity',
  likelihood: 'likelihood',
  ...byMeasure(({ field, column }) => [field, column]),
  lineDistanceMetres: 'line_distance',
  levelMetres: 'level',
  waterDegreesC: 'water_temperature',
  mappedAs: 'mapped_as',
  platform: 'platform',
  control: 'control',
  why: 'why',
  title: 'title',
  note: 'note',
  kit: 'kit',
} as const satisfies Partial<Record<keyof RoundEntry, string>>;

/** The rows of a bank round speak of waters and pegs that exist and hold what their kind needs; no two rounds share a reference. */
export function checkRoundRows({ rounds, known }: Content): readonly Fault[] {
  const waters = [...known.waters];
  const unknownWater = unknownName('water-unknown', waters, `one of ${listed(waters)}`, 'Correct the water.');
  const unknownPegOf = new Map<string, UnknownName>();
  const rows = rounds.flatMap(({ rows: own }) => own);
  const faults = rows.flatMap(({ value, source }) => {
    if (!known.waters.has(value.water)) return [unknownWater(source(), ['water'], value.water)];
    const needs = missingNeeds(value, source());
    if (value.peg === undefined || known.pegs.has(pegKey(value.water, value.peg))) return needs;
    const unknownPeg = unknownPegOf.get(value.water) ?? unknownPegName(value.water, known.pegs);
    unknownPegOf.set(value.water, unknownPeg);
    return [...needs, unknownPeg(source(), ['peg'], value.peg)];
  });
  return [...faults, ...sharedReferences(rounds)];
}

function missingNeeds(entry: RoundEntry, source: Source): readonly Fault[] {
  return NEEDS[entry.entry].flatMap((oneOf) => {
    if (oneOf.some((field) => entry[field] !== undefined)) return [];
    const columns = oneOf.map((field) => COLUMN_OF[field]);
    return [
      faultAt(source, [columns[0] ?? 'entry'], {
        rule: 'round-row',
        found: 'nothing',
        expected: `${columns.join(' or ')} in a row of ${entry.entry}`,
        mend: 'Fill the cell in.',
      }),
    ];
  });
}

function sharedReferences(rounds: Content['rounds']): readonly Fault[] {
  const first = new Map<string, string>();
  return rounds.flatMap(({ value: { ref, file } }) => {
    const other = first.get(ref);
    if (other === undefined) {
      first.set(ref, file);
      return [];
    }
    return [
      {
        file,
        line: 1,
        column: 1,
        field: '',
        rule: 'round-duplicate',
        found: `the reference ${ref} a second time`,
        expected: `a reference of its own; the first is ${other}`,
        mend: 'Delete the file if it is a copy, or rename it.',
        severity: 'error',
      } satisfies Fault,
    ];
  });
}
