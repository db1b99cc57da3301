import { type Box, hatch } from './hatch.ts';
import { smoothThrough } from './smooth-path.ts';
import { STRIP_LINES_METRES, type StripPeg } from './strip-peg.ts';
import { short, svgPath, svgText } from './svg-markup.ts';

/** How far the bed of a peg reaches to either side where it is not joined to the next. */
const SHOULDER = 14;

/** Where a strip's water is drawn. */
interface DepthScale {
  readonly surface: number;
  readonly bottom: number;
  readonly deepestMetres: number;
}

/** The water of a strip, and where its bed does not run on. */
export interface BedFrame extends DepthScale {
  /** How far the bed of the first and the last peg reaches, where that is farther than its shoulders. */
  readonly edges?: readonly [from: number, to: number];
  /** Where the bank after a peg is torn, if it is drawn shorter than it is. */
  readonly tears: readonly (number | null)[];
}

type Place = readonly [number, number];

/**
 * The bed below a strip as hills one behind the other: the hindmost 2 m out, the foremost 13 m. Joined from peg to peg where
 * both are plumbed and the bank between them is drawn whole; where nothing is known the water is hatched.
 */
export function stripBed(pegs: readonly StripPeg[], xs: readonly number[], frame: BedFrame): string {
  const layers = bedRuns(pegs, xs, frame);
  const hills = layers.map((runs) => svgPath(runs.map((run) => hillOf(run, frame.bottom)).join(''), 'hill'));
  // Once more as lines: a nearer hill that is hidden behind a farther one, as before an island, is still seen.
  const lines = layers.map((runs, line) => svgPath(runs.map((run) => smoothThrough(run)).join(''), `bed bed-${line}`));
  return [...hills, ...lines, ...unplumbedSpans(pegs, xs).map(([from, to]) => unplumbed(from, to, frame))].join('');
}

/** The same in a drawing so small that each hill is its own line, and the farthest, close by the one before it, is left out. */
export function smallBed(pegs: readonly StripPeg[], xs: readonly number[], frame: BedFrame): string {
  const layers = bedRuns(pegs, xs, frame).slice(0, -1);
  // Its sides end below the drawing's edge, so that no line runs along it.
  const below = frame.bottom + 2;
  const hills = layers.map((runs, line) =>
    svgPath(runs.map((run) => hillOf(run, below, 1)).join(''), `hill bed bed-${line}`),
  );
  const hatched = unplumbedSpans(pegs, xs).map(([from, to]) => hatch(waterBetween(from, to, frame), 7));
  return hills.join('') + svgPath(hatched.join(''), 'unknown');
}

function hillOf(run: readonly Place[], bottom: number, unit: 0.1 | 1 = 0.1): string {
  return `${smoothThrough(run, unit)}V${bottom}H${short(run[0]![0])}z`;
}

/** Figures lie this far apart at least, so that none hides another. */
const NAME_HEIGHT = 10;

/** How far out each line of bed lies, `2`, `6`, `11`, `13` metres, before the first peg of a strip where it is plumbed. */
export function lineNames(first: StripPeg, x: number, frame: DepthScale): string {
  const known = STRIP_LINES_METRES.flatMap((metres, line) => {
    const depth = first.depthsMetres[line] ?? null;
    return depth === null ? [] : [{ metres, y: depthAt(frame, depth) + 3.5 }];
  }).sort((a, b) => a.y - b.y);
  // From the bottom up: the lowest name stands by its line, the others give way.
  let free = frame.bottom - 1;
  return known
    .toReversed()
    .map(({ metres, y }) => {
      free = Math.min(y, free);
      const name = svgText(x - SHOULDER - 3, free, String(metres), 'end', 'line-name');
      free -= NAME_HEIGHT;
      return name;
    })
    .join('');
}

/** How deep a place of the bed is drawn. */
export function depthAt({ surface, bottom, deepestMetres }: DepthScale, metres: number): number {
  return surface + ((bottom - surface - 4) * Math.max(0, metres)) / deepestMetres;
}

/** Of each line of bed, nearest first, the places it runs through without a gap. */
function bedRuns(
  pegs: readonly StripPeg[],
  xs: readonly number[],
  frame: BedFrame,
): readonly (readonly (readonly Place[])[])[] {
  return STRIP_LINES_METRES.map((_, line) => runsOf(pegs, xs, line, frame));
}

function runsOf(
  pegs: readonly StripPeg[],
  xs: readonly number[],
  line: number,
  frame: BedFrame,
): readonly (readonly Place[])[] {
  const [from, to] = frame.edges ?? [xs[0]! - SHOULDER, xs.at(-1)! + SHOULDER];
  const runs: Place[][] = [];
  let run: Place[] = [];
  pegs.forEach((peg, i) => {
    const depth = peg.depthsMetres[line] ?? null;
    if (depth === null) return;
    const [x, y] = [xs[i]!, depthAt(frame, depth)];
    if (run.length === 0) run.push([i === 0 ? from : (frame.tears[i - 1] ?? x - SHOULDER), y]);
    run.push([x, y]);
    const [next, tear] = [pegs[i + 1], frame.tears[i] ?? null];
    if (next !== undefined && tear === null && (next.depthsMetres[line] ?? null) !== null) return;
    runs.push([...run, [next === undefined ? to : (tear ?? x + SHOULDER), y]]);
    run = [];
  });
  return runs;
}

function unplumbedSpans(pegs: readonly StripPeg[], xs: readonly number[]): readonly Place[] {
  return pegs.flatMap(({ depthsMetres }, i): readonly Place[] =>
    depthsMetres.every((depth) => depth === null) ? [[xs[i]! - SHOULDER, xs[i]! + SHOULDER]] : [],
  );
}

function unplumbed(from: number, to: number, frame: BedFrame): string {
  const [x, y] = [(from + to) / 2 + 3, (frame.surface + frame.bottom) / 2];
  const words = `<text class="said" transform="translate(${short(x)} ${short(y)})rotate(-90)">not plumbed</text>`;
  return svgPath(hatch(waterBetween(from, to, frame), 7), 'unknown') + words;
}

function waterBetween(from: number, to: number, { surface, bottom }: BedFrame): Box {
  return { x: from, y: surface, width: to - from, height: bottom - surface };
}
