import type { Units } from '../../domain/bag.ts';
import type { LatLng } from '../../domain/place.ts';
import { compassWords, formatDistance, formatPosition } from '../../domain/place-words.ts';
import { distanceMetres, geodesicBetween } from '../../ground/geodesy/geodesic-between.ts';
import { gridReference } from '../../ground/national-grid.ts';

/** Where a phone says it is: the true place lies within the accuracy 95 times in 100 (Geolocation, W3C). */
export interface Fix {
  readonly at: LatLng;
  readonly accuracyMetres: number;
}

export interface PlacedPeg {
  readonly peg: string;
  /** " of Kiln Pool", where pegs of several waters are among those asked about. */
  readonly of?: string;
  readonly closed?: boolean;
  /** The throw line nearest to it and the walk there: "Throw line K3, 45 m north-east (walk 60 m)". */
  readonly throwLine?: string;
  readonly at: LatLng;
}

/** What a fix tells: words to read, and whether the map may show it. */
export interface Where {
  readonly said: string;
  readonly isShown: boolean;
}

/** A rougher fix may lie on the other bank: it is told, not shown. */
export const ROUGHEST_METRES = 50;
/** Farther than this from every peg nobody is at the water (our own choice). */
export const AT_WATER_METRES = 500;
/** More than this many pegs are told by their number alone. */
const MAX_NAMED = 4;

/**
 * Says where the reader is: the position to read out to an emergency call first, then the nearest peg and the one asked for.
 * Where the fix leaves open which peg is nearest, all that may be are named and none is claimed. A rough fix, or one away
 * from the water, is said to be that and is not shown.
 */
export function whereWords(
  fix: Fix,
  pegs: readonly PlacedPeg[],
  units: Pick<Units, 'length'>,
  asked: string | null = null,
): Where {
  const { at, accuracyMetres } = fix;
  const grid = gridReference(at);
  const position = `You are at ${grid === null ? '' : `${grid}, `}${formatPosition(at)}, give or take ${formatDistance(accuracyMetres, units)}.`;
  const rough = accuracyMetres > ROUGHEST_METRES;
  const may = pegsThatMayBeNearest(fix, pegs);
  const [nearest] = may;
  if (nearest === undefined) return { said: position, isShown: !rough };
  const away = distanceMetres(at, nearest.at);
  if (away > AT_WATER_METRES + accuracyMetres)
    return {
      said: `${position} That is ${formatDistance(away, units)} from the nearest peg: not on this map.`,
      isShown: false,
    };
  if (rough) return { said: `${position} Too rough to show: try again under open sky.`, isShown: false };
  const told = asked === null || may[0]?.peg === asked ? undefined : pegs.find(({ peg }) => peg === asked);
  const words = [
    may.length === 1 ? `Nearest: peg ${wayTo(fix, nearest, units)}.` : oneOf(may),
    ...(told === undefined ? [] : [`Peg ${wayTo(fix, told, units)}.`]),
    ...(nearest.throwLine === undefined
      ? []
      : [`From peg ${nearest.peg} the nearest throw line: ${nearest.throwLine}.`]),
  ];
  return { said: [position, ...words].join(' '), isShown: true };
}

/**
 * The pegs that may be the nearest to a place no farther from the fix than its accuracy, the nearest to the fix first: those
 * whose half of the ground, cut midway to the nearest one, comes as near as that.
 */
export function pegsThatMayBeNearest({ at, accuracyMetres }: Fix, pegs: readonly PlacedPeg[]): readonly PlacedPeg[] {
  const byDistance = pegs
    .map((peg) => ({ peg, metres: distanceMetres(at, peg.at) }))
    .sort((a, b) => a.metres - b.metres);
  const [first] = byDistance;
  if (first === undefined) return [];
  return byDistance
    .filter(({ peg, metres }) => {
      const apart = distanceMetres(first.peg.at, peg.at);
      return apart === 0 || (metres ** 2 - first.metres ** 2) / (2 * apart) <= accuracyMetres;
    })
    .map(({ peg }) => peg);
}

function oneOf(may: readonly PlacedPeg[]): string {
  const [first] = may;
  const isOneWater = may.every(({ of }) => of === first?.of);
  const names = may.map((peg) => (isOneWater ? numberOf(peg) : nameOf(peg)));
  const all = isOneWater ? (first?.of ?? '') : '';
  const which =
    names.length > MAX_NAMED
      ? `one of ${names.length} pegs${all}, ${names[0]} among them`
      : `peg ${names.slice(0, -1).join(', ')} or ${names.at(-1)}${all}`;
  return `Nearest may be ${which}: the fix does not tell which. Read the number on the post.`;
}

function nameOf(peg: PlacedPeg): string {
  return `${numberOf(peg)}${peg.of ?? ''}`;
}

function numberOf({ peg, closed = false }: PlacedPeg): string {
  return closed ? `${peg} (closed)` : peg;
}

function wayTo({ at }: Fix, peg: PlacedPeg, units: Pick<Units, 'length'>): string {
  const way = geodesicBetween(at, peg.at);
  return `${nameOf(peg)}, ${formatDistance(way.distanceMetres, units)} to the ${compassWords(way.bearingDegrees)}`;
}
