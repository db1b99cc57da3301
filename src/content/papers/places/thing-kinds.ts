import { headingWords } from '../headings.ts';
import type { DrawnThing } from './drawn-thing.ts';

/** What a thing of a drawing may be on the venue's map; `peg` and `leave` are no kinds of the map. */
export type ThingKind = string;

const POINTS: readonly (readonly [string, RegExp])[] = [
  ['car-park', /\b(car ?park|parking|park here)\b/],
  ['throw-line', /\b(throw ?(line|bag|rope)|life ?(ring|buoy|belt|line)|rescue line)\b/],
  ['aed', /\b(aed|defib|defibrillator)\b/],
  ['gate', /\b(gate|entrance|barrier)\b/],
  ['lodge', /\b(lodge|club ?house|cabin|tackle shop)\b/],
  ['toilet', /\b(toilet|toilets|wc|loo)\b/],
  ['aerator', /\baerator\b/],
  ['inlet', /\b(inlet|inflow|feeder stream)\b/],
  ['outlet', /\b(outlet|outflow|monk|sluice)\b/],
  ['gauge', /\b(gauge|gauge board|level board)\b/],
];
const LINES: readonly (readonly [string, RegExp])[] = [
  ['overhead-line', /\b(overhead|power ?lines?|pylons?|wires?|cables?|\d+ ?kv|electric line)\b/],
  ['path', /\b(path|track|walkway|way|footpath|drive)\b/],
];
const AREAS: readonly (readonly [string, RegExp])[] = [
  ['island', /\bislands?\b/],
  ['lilies', /\blil(y|ies)\b|\blily ?(pads?|bed)\b/],
  ['reeds', /\b(reeds?|reed ?bed|rushes|reedmace)\b/],
  ['trees', /\b(trees?|wood|willows?|alders?|copse)\b/],
  ['snag', /\b(snags?|sunken)\b/],
  ['building', /\b(building|lodge|shed|barn|house)\b/],
  ['outline', /\b(outline|shore|shoreline|waters? edge|lake|pool|pond|water|pit|mere|reservoir)\b/],
];
const BY_SHAPE = { point: POINTS, line: LINES, area: AREAS } as const;

/** Kinds a thing of a shape may have, for a question. */
export function kindsFor(shape: DrawnThing['shape']['type']): readonly ThingKind[] {
  return [...BY_SHAPE[shape].map(([kind]) => kind), ...(shape === 'point' ? ['peg'] : [])];
}

/** The kind a drawing's own words give; null where they do not tell. A wire is a wire whatever else the words say. */
export function kindInWords(
  { name, note, kind, shape, isTrack }: DrawnThing,
  waterNames: readonly string[],
): ThingKind | null {
  const known = BY_SHAPE[shape.type];
  if (kind !== null && known.some(([one]) => one === kind)) return kind;
  // A water may be called Alder Pool: its whole name says more than a word in it.
  if (shape.type === 'area' && waterNames.some((water) => headingWords(name) === headingWords(water))) return 'outline';
  const words = headingWords(`${name} ${note}`);
  const found = known.find(([, pattern]) => pattern.test(words));
  // A phone's own name for a walk ("Track 3") says nothing of the ground.
  if (found !== undefined && !(isTrack && found[0] === 'path')) return found[0];
  if (shape.type === 'point' && pegInName(name) !== null) return 'peg';
  return null;
}

/** The peg a point is named for: the last number in its name, noughts in front taken off, with a letter that touches it. */
export function pegInName(name: string): string | null {
  if (name.includes('?')) return null;
  const found = /(\d{1,4})\s?([a-z](?![a-z]))?(?!.*\d)/i.exec(name);
  if (found === null) return null;
  const number = String(Number(found[1]));
  return `${number}${(found[2] ?? '').toLowerCase()}`;
}
