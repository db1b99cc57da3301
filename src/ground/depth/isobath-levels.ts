/** Intervals a chart of a pond uses, in metres, each up to the greatest depth beside it. */
const INTERVALS: readonly (readonly [upToMetres: number, intervalMetres: number])[] = [
  [1.2, 0.2],
  [3, 0.5],
  [8, 1],
  [20, 2],
  [50, 5],
];
const DEEPEST_INTERVAL_METRES = 10;

/** The depths to draw isobaths at: whole multiples of an interval, deeper than 0 and shallower than the greatest depth. */
export function isobathLevels(maximumMetres: number): readonly number[] {
  const interval = INTERVALS.find(([upTo]) => maximumMetres <= upTo)?.[1] ?? DEEPEST_INTERVAL_METRES;
  const levels: number[] = [];
  for (let i = 1; i * interval < maximumMetres; i++) levels.push(Math.round(i * interval * 100) / 100);
  return levels;
}
