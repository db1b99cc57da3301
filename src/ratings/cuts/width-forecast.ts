import type { ClosingIn, CutSpell } from './cut-spells.ts';
import { logGrowth } from './cut-usual.ts';
import { growthOf } from './growth-days.ts';

/** What a width measured since the last cut says of the log growth at which the next is due. */
export interface WidthForecast {
  readonly logGrowth: number;
  readonly variance: number;
}

/** A width is measured to about this, in metres: a tape over a grown edge (this project's choice). */
const WIDTH_ERROR_METRES = 0.15;
/** Fewer spells that ended with a width measured on the way teach nothing. */
const LEAST_SPELLS = 4;
/** How well one width tells the due day before anything is learnt, and how many spells that belief counts for. */
const USUAL_VARIANCE = 0.35 ** 2;
const USUAL_COUNT = 4;

/**
 * Learns from the ended spells how far banks here close in before they are cut, and forecasts an unfinished spell from the
 * width last measured in it: at its pace so far, when has it closed in as far?
 */
export function learnWidths(
  spells: readonly CutSpell[],
  restingShare: number,
): (spell: CutSpell) => WidthForecast | null {
  const seen = spells.flatMap(({ closingIn, lasted, isEnded }) =>
    closingIn === null || !isEnded
      ? []
      : [
          {
            log: logGrowth(growthOf(lasted, restingShare)) - ownPace(closingIn, restingShare),
            noise: noiseOf(closingIn),
          },
        ],
  );
  if (seen.length < LEAST_SPELLS) return () => null;
  let scatter = USUAL_VARIANCE;
  let mean = 0;
  for (let round = 0; round < 4; round += 1) {
    const weights = seen.map(({ noise }) => 1 / (scatter + noise));
    const sum = weights.reduce((a, b) => a + b, 0);
    mean = seen.reduce((total, { log }, index) => total + (weights[index] as number) * log, 0) / sum;
    // What scatters beyond the error of the tape, drawn towards the belief held before.
    const beyond = seen.reduce((total, { log, noise }) => total + Math.max((log - mean) ** 2 - noise, 0), 0);
    scatter = (beyond + USUAL_COUNT * USUAL_VARIANCE) / (seen.length + USUAL_COUNT);
  }
  const meanVariance = scatter / seen.length;
  return ({ closingIn }) =>
    closingIn === null
      ? null
      : {
          logGrowth: mean + ownPace(closingIn, restingShare),
          variance: scatter + meanVariance + noiseOf(closingIn),
        };
}

/** Log growth days in which this bank closes in by one metre, as far as it has been seen. */
function ownPace({ metres, after }: ClosingIn, restingShare: number): number {
  return logGrowth(growthOf(after, restingShare)) - Math.log(Math.max(metres, WIDTH_ERROR_METRES));
}

/** Variance of the log of what was closed in, from the error of both widths (the delta rule). */
function noiseOf({ metres }: ClosingIn): number {
  return 2 * (WIDTH_ERROR_METRES / Math.max(metres, WIDTH_ERROR_METRES)) ** 2;
}
