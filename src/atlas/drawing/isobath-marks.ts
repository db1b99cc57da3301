import { mapPath } from './map-path.ts';
import { type Point, simplifyLine } from './simplify-line.ts';
import { escapeMarkup } from './svg-markup.ts';

const TOLERANCE = 2.5;
/** Shorter lines than this carry no figure: it would hide them. */
const SHORTEST_LABELLED = 260;

interface Isobath {
  readonly words: string;
  readonly lines: readonly (readonly Point[])[];
}

/** Depth contours, the figure written once on the longest line of each. */
export function isobathMarks(isobaths: readonly Isobath[]): readonly string[] {
  return isobaths.map(({ words, lines }) => {
    const d = lines.map((line) => mapPath(simplifyLine(line, TOLERANCE))).join('');
    if (d === '') return '';
    const longest = lines.reduce((best, line) => (lengthOf(line) > lengthOf(best) ? line : best));
    const [x, y] = longest[Math.floor(longest.length / 3)] ?? [0, 0];
    const figure =
      lengthOf(longest) < SHORTEST_LABELLED
        ? ''
        : `<text class="m-depth" x="${Math.round(x)}" y="${Math.round(y) + 12}">${escapeMarkup(words)}</text>`;
    return `<path class="m-isobath" d="${d}"/>${figure}`;
  });
}

function lengthOf(line: readonly Point[]): number {
  return line.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - line[i]![0], y - line[i]![1]), 0);
}
