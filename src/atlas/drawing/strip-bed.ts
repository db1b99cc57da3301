import { hatch } from './hatch.ts';
import { isFolded, STRIP_LINES_METRES, type StripPeg } from './strip-peg.ts';
import { pathThrough, short, svgPath, svgText } from './svg-markup.ts';

/** How far the bed of a peg reaches to either side where it is not joined to the next. */
const SHOULDER = 14;

/** Where a strip's water is drawn. */
export interface BedFrame {
  readonly surface: number;
  readonly bottom: number;
  readonly deepestMetres: number;
}

type Place = readonly [number, number];

/**
 * The bed below a strip as hills one behind the other: the hindmost 2 m out, the foremost 13 m. Joined from peg to peg where
 * both are plumbed and the bank between them is drawn whole; where nothing is known the water is hatched.
 */
export function stripBed(pegs: readonly StripPeg[], xs: readonly number[], frame: BedFrame): string {
  const layers = STRIP_LINES_METRES.map((_, line) => runsOf(pegs, xs, line, frame));
  const hills = layers.flatMap((runs, line) =>
    runs.map((run) => {
      const [first, last] = [run[0]!, run.at(-1)!];
      return svgPath(
        pathThrough([[first[0], frame.bottom], ...run, [last[0], frame.bottom]], true),
        `hill hill-${line}`,
      );
    }),
  );
  // Once more as lines: a nearer hill that is hidden behind a farther one, as before an island, is still seen.
  const lines = layers.map((runs, line) => svgPath(runs.map((run) => pathThrough(run)).join(''), `bed bed-${line}`));
  return [...hills, ...lines, ...unplumbedSpans(pegs, xs).map(([from, to]) => unplumbed(from, to, frame))].join('');
}

/** Figures lie this far apart at least, so that none hides another. */
const NAME_HEIGHT = 10;

/** How far out each line of bed lies, `2`, `6`, `11`, `13` metres, before the first peg of a strip where it is plumbed. */
export function lineNames(first: StripPeg, x: number, frame: BedFrame): string {
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
export function depthAt({ surface, bottom, deepestMetres }: BedFrame, metres: number): number {
  return surface + ((bottom - surface - 4) * Math.max(0, metres)) / deepestMetres;
}

function runsOf(
  pegs: readonly StripPeg[],
  xs: readonly number[],
  line: number,
  frame: BedFrame,
): readonly (readonly Place[])[] {
  const runs: Place[][] = [];
  let run: Place[] = [];
  const close = (x: number) => {
    const last = run.at(-1);
    if (last !== undefined) runs.push([...run, [x + SHOULDER, last[1]]]);
    run = [];
  };
  pegs.forEach((peg, i) => {
    const depth = peg.depthsMetres[line] ?? null;
    if (depth === null) return;
    const y = depthAt(frame, depth);
    if (run.length === 0) run.push([xs[i]! - SHOULDER, y]);
    run.push([xs[i]!, y]);
    const next = pegs[i + 1];
    if (next === undefined || (next.depthsMetres[line] ?? null) === null || isFolded(peg.gapMetres ?? 0)) close(xs[i]!);
  });
  return runs;
}

function unplumbedSpans(pegs: readonly StripPeg[], xs: readonly number[]): readonly Place[] {
  return pegs.flatMap(({ depthsMetres }, i): readonly Place[] =>
    depthsMetres.every((depth) => depth === null) ? [[xs[i]! - SHOULDER, xs[i]! + SHOULDER]] : [],
  );
}

function unplumbed(from: number, to: number, { surface, bottom }: BedFrame): string {
  const box = { x: from, y: surface, width: to - from, height: bottom - surface };
  const middle = (from + to) / 2;
  const words = `<text class="said" transform="translate(${short(middle + 3)} ${short((surface + bottom) / 2)})rotate(-90)">not plumbed</text>`;
  return svgPath(hatch(box, 7), 'unknown') + words;
}
