/** What became of one mutant, in the words of the mutation report. */
export interface MutantOutcome {
  readonly status: string;
  readonly path: string;
  readonly line: number;
}

/** The share of mutants that some test noticed, with a 95% interval. */
export interface RoomScore {
  readonly mutants: number;
  readonly noticed: number;
  readonly lines: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

const NOTICED = new Set(['Killed', 'Timeout']);
const COUNTED = new Set([...NOTICED, 'Survived', 'NoCoverage']);
const Z_95 = 1.959964;

/**
 * The score of mutants that were drawn by the line. Mutants of one line live and die together more often than not, so that they tell
 * less than as many drawn one by one: the interval is Wilson's (1927) on their number divided by the design effect, which is the
 * variance of a ratio over drawn clusters (Cochran, Sampling Techniques, 1977, section 6) over that of independent draws. What does not compile or
 * was left out is not counted.
 */
export function roomScore(outcomes: readonly MutantOutcome[]): RoomScore {
  const lines = new Map<string, { mutants: number; noticed: number }>();
  for (const { status, path, line } of outcomes) {
    if (!COUNTED.has(status)) continue;
    const cluster = lines.get(`${path}:${line}`) ?? { mutants: 0, noticed: 0 };
    cluster.mutants++;
    if (NOTICED.has(status)) cluster.noticed++;
    lines.set(`${path}:${line}`, cluster);
  }
  const clusters = [...lines.values()];
  const mutants = clusters.reduce((sum, cluster) => sum + cluster.mutants, 0);
  const noticed = clusters.reduce((sum, cluster) => sum + cluster.noticed, 0);
  const share = noticed / mutants;
  const spread = clusters.reduce((sum, cluster) => sum + (cluster.noticed - share * cluster.mutants) ** 2, 0);
  const ofClusters = (spread * clusters.length) / ((clusters.length - 1) * mutants ** 2);
  const ofSingles = (share * (1 - share)) / (mutants - 1);
  const effective = ofSingles > 0 && clusters.length > 1 ? mutants / Math.max(1, ofClusters / ofSingles) : mutants;
  const [low, high] = wilsonInterval(share, effective);
  return { mutants, noticed, lines: clusters.length, share, low, high };
}

function wilsonInterval(share: number, draws: number): readonly [number, number] {
  const square = Z_95 ** 2 / draws;
  const middle = (share + square / 2) / (1 + square);
  const half = (Z_95 / (1 + square)) * Math.sqrt((share * (1 - share)) / draws + square / (4 * draws));
  return [Math.max(0, middle - half), Math.min(1, middle + half)];
}
