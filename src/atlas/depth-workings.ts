import { formatLength } from '../domain/length.ts';
import type { Atlas } from './atlas.ts';
import { unusedWords } from './depth-words.ts';

/** What the depths of one water rest on. */
export interface DepthWorkings {
  readonly water: string;
  /** Null where nobody has plumbed. */
  readonly plumbed: {
    readonly soundings: string;
    readonly share: string;
    readonly mean: string;
    readonly maximum: string;
    readonly volume: string;
    readonly notes: readonly string[];
  } | null;
}

/** Soundings used and not used, and what they come to, for every water. */
export function depthWorkings(atlas: Atlas): readonly DepthWorkings[] {
  const { units } = atlas.venue.settings;
  return atlas.venue.waters.map(({ id, name }) => {
    const depth = atlas.survey.waters[id]?.depth ?? null;
    if (depth === null) return { water: name, plumbed: null };
    const uncorrected =
      depth.uncorrected === 0 ? [] : [`${depth.uncorrected} without a level at that time: taken as if at datum`];
    const unused = depth.unused.map((each) => `${each.soundings} not used: ${unusedWords(each)}`);
    return {
      water: name,
      plumbed: {
        soundings: depth.soundings.toLocaleString('en-GB'),
        share: `${Math.round(depth.plumbedShare * 100)}%`,
        mean: formatLength(depth.meanMetres, units),
        maximum: formatLength(depth.maximumMetres, units),
        volume: `${Math.round(depth.volumeCubicMetres).toLocaleString('en-GB')} m³`,
        notes: [...uncorrected, ...unused],
      },
    };
  });
}
