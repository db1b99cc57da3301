import type { ClosingIn, CutSpell } from './cut-spells.ts';
import { logGrowth } from './cut-usual.ts';
import { growthOf } from './growth-days.ts';

/** What a width measured since the last cut says of the log growth at which the next is due. */
export interface WidthForecast {
  readonly logGrowth: number;
  readonly variance: number;
}

/** How well a width may be measured, in metres, with a tape over a grown edge: which of these holds is learnt. */
const WIDTH_ERRORS_METRES = [0.03, 0.06, 0.1, 0.15, 0.25, 0.4, 0.6] as const;
/** A bank that has closed in by less than this shows nothing of its pace beyond the error of the tape. */
const MIN_METRES = 0.2;
/** Fewer spells that ended with a width measured on the way teach nothing. */
const MIN_SPELLS = 4;
/** Looks farther apart than this tell no more than that: the first is a quarter of the way to the second. */
const WIDEST_LOG_GAP = Math.log(4);
/** How well one width tells the due day before anything is learnt, and how many spells that belief counts for. */
const USUAL_VARIANCE = 0.35 ** 2;
const USUAL_COUNT = 8;

/**
 * Learns from the ended spells how far banks here close in before they are cut, and forecasts an unfinished spell from the
 * width last measured in it: at its pace so far, when has it closed in as far?
 */
export function learnWidths(
  spells: readonly CutSpell[],
  restingShare: number,
): (spell: CutSpell) => WidthForecast | null {
  // Every width on the way, not the last alone: the unfinished spell may be seen as early as any of them.
  const ended = spells.filter((spell) => spell.isEnded && tellingOf(spell).length > 0);
  if (ended.length < MIN_SPELLS) return () => null;
  const seen = ended.flatMap((spell): readonly SeenPace[] => {
    const about = endedAbout(spell, restingShare);
    return tellingOf(spell).map((closingIn) => ({
      log: about.log - ownPace(closingIn, restingShare),
      between: about.variance,
      closingIn,
      share: 1 / tellingOf(spell).length,
    }));
  });
  const fits = WIDTH_ERRORS_METRES.map((error) => fitPaces(seen, error, ended.length));
  const most = Math.max(...fits.map(({ logLikelihood }) => logLikelihood));
  const weighed = fits.map((each) => ({ ...each, weight: Math.exp(each.logLikelihood - most) }));
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0);
  return (spell) => {
    const closingIn = spell.closingIn.at(-1);
    if (closingIn === undefined || closingIn.metres < MIN_METRES) return null;
    const over = (value: (each: (typeof weighed)[number]) => number) =>
      weighed.reduce((sum, each) => sum + each.weight * value(each), 0) / total;
    const mean = over((each) => each.mean);
    return {
      logGrowth: mean + ownPace(closingIn, restingShare),
      variance: over(
        (each) => each.scatter * (1 + 1 / ended.length) + noiseOf(closingIn, each.error) + (each.mean - mean) ** 2,
      ),
    };
  };
}

function tellingOf({ closingIn }: CutSpell): readonly ClosingIn[] {
  return closingIn.filter(({ metres }) => metres >= MIN_METRES);
}

/** How an ended spell went on from a width: log growth at its end, less the pace; with the variance of the end alone. */
interface SeenPace {
  readonly log: number;
  readonly between: number;
  readonly closingIn: ClosingIn;
  /** Looks at one spell tell of one spell: each counts as its share of it. */
  readonly share: number;
}

/** Mean and scatter of what was seen, for one error of the tape. */
function fitPaces(seen: readonly SeenPace[], error: number, spells: number) {
  const noises = seen.map(({ closingIn, between }) => between + noiseOf(closingIn, error));
  let scatter = USUAL_VARIANCE;
  let mean = 0;
  for (let round = 0; round < 4; round += 1) {
    const weights = noises.map((noise, index) => seen[index]!.share / (scatter + noise));
    const sum = weights.reduce((a, b) => a + b, 0);
    mean = seen.reduce((total, { log }, index) => total + (weights[index] as number) * log, 0) / sum;
    // What scatters beyond the error of the tape, drawn towards the belief held before.
    const beyond = seen.reduce(
      (all, { log, share }, index) => all + share * Math.max((log - mean) ** 2 - noises[index]!, 0),
      0,
    );
    scatter = (beyond + USUAL_COUNT * USUAL_VARIANCE) / (spells + USUAL_COUNT);
  }
  const logLikelihood = seen.reduce((sum, { log, share }, index) => {
    const variance = scatter + noises[index]!;
    return sum - 0.5 * share * (Math.log(variance) + (log - mean) ** 2 / variance);
  }, 0);
  return { mean, scatter, error, logLikelihood };
}

/** When a spell ended, as log growth: somewhere between two looks, each time alike likely. */
function endedAbout({ lasted, uncutUntil }: CutSpell, restingShare: number): { log: number; variance: number } {
  const by = logGrowth(growthOf(lasted, restingShare));
  const notBy = Math.max(logGrowth(growthOf(uncutUntil, restingShare)), by - WIDEST_LOG_GAP);
  return { log: (by + notBy) / 2, variance: (by - notBy) ** 2 / 12 };
}

/** Log growth days in which this bank closes in by one metre, as far as it has been seen. */
function ownPace({ metres, after }: ClosingIn, restingShare: number): number {
  return logGrowth(growthOf(after, restingShare)) - Math.log(metres);
}

/** Variance of the log of what was closed in, from the error of both widths (the delta rule). */
function noiseOf({ metres }: ClosingIn, error: number): number {
  return 2 * (error / metres) ** 2;
}
