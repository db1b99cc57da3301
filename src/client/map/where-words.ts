import type { Units } from '../../domain/bag.ts';
import type { LatLng } from '../../domain/place.ts';
import { compassWords, formatDistance, formatPosition } from '../../domain/place-words.ts';
import { geodesicBetween } from '../../ground/geodesy/geodesic-between.ts';
import { gridReference } from '../../ground/national-grid.ts';

/** Where a phone says it is. */
export interface Fix {
  readonly at: LatLng;
  readonly accuracyMetres: number;
}

export interface PlacedPeg {
  readonly peg: string;
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

/**
 * Says where the reader is: the position to read out to an emergency call first, then the nearest peg and the one asked for.
 * A rough fix, or one away from the water, is said to be that and is not shown.
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
  const towards = pegs.map((peg) => ({ peg, way: geodesicBetween(at, peg.at) }));
  const nearest = towards.sort((a, b) => a.way.distanceMetres - b.way.distanceMetres)[0];
  const rough = accuracyMetres > ROUGHEST_METRES;
  if (nearest === undefined) return { said: position, isShown: !rough };
  const { distanceMetres } = nearest.way;
  if (distanceMetres > AT_WATER_METRES + accuracyMetres)
    return {
      said: `${position} That is ${formatDistance(distanceMetres, units)} from the nearest peg: not on this map.`,
      isShown: false,
    };
  if (rough) return { said: `${position} Too rough to show: try again under open sky.`, isShown: false };
  const told = asked === null ? undefined : towards.find(({ peg }) => peg.peg === asked);
  const words = [nearest, ...(told === undefined || told === nearest ? [] : [told])].map(
    ({ peg, way }, index) =>
      `${index === 0 ? 'Nearest: peg' : 'Peg'} ${peg.peg}, ${formatDistance(way.distanceMetres, units)} to the ${compassWords(way.bearingDegrees)}.`,
  );
  return { said: [position, ...words].join(' '), isShown: true };
}
