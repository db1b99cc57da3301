import { hatch, levelStrokes } from './hatch.ts';
import { short, stroke, svgElement, svgPath, svgText } from './svg-markup.ts';

/** One bar of shares in the parts' order, adding up to 1; null where no bag was logged by parts. */
export interface MakeUpBar {
  readonly letter: string;
  readonly shares: readonly number[] | null;
  readonly mark?: string;
  readonly now: boolean;
}

const SLOT = 25;
const LEFT = 58;
const TOP = 4;
const PANEL = 92;

/**
 * Stacked shares, the first part at the bottom, told apart by their fill: plain, slanting strokes, level strokes, hollow,
 * then over again; and in figures, one row a part. Nothing rests on colour.
 */
export function makeUpBars(parts: readonly string[], bars: readonly MakeUpBar[], label: string): string {
  const width = LEFT + SLOT * bars.length + 2;
  const base = TOP + PANEL;
  const groups = bars.map((bar, index) => {
    const x = LEFT + SLOT * index + 3;
    const attributes = `class="bar solid${bar.now ? ' now' : ''}"${bar.mark === undefined ? '' : ` ${bar.mark}`}`;
    const figures = parts.map((_, part) => {
      const share = bar.shares?.[part];
      return svgText(x + 9.5, base + 32 + part * 15, share === undefined ? '–' : String(Math.round(share * 100)));
    });
    const letter = svgText(x + 9.5, base + 16, bar.letter, 'middle', 'letter');
    return `<g ${attributes}>${stack(bar.shares ?? [], x)}${letter}${figures.join('')}</g>`;
  });
  const names = parts.map((name, part) => {
    const y = base + 32 + part * 15;
    return `${swatch(2, y - 9, part)}${svgText(16, y, name, 'start', 'said')}`;
  });
  const axis = svgPath(stroke(LEFT, base, width, base), 'par') + svgText(LEFT - 5, TOP + 9, '100%', 'end');
  return svgElement(
    { width, height: base + 22 + parts.length * 15, label, kind: 'make-up-bars' },
    axis + groups.join('') + names.join(''),
  );
}

function stack(shares: readonly number[], x: number): string {
  let base = TOP + PANEL;
  return shares
    .map((share, part) => {
      const height = PANEL * share;
      base -= height;
      return filledBox({ x, y: base, width: 19, height }, part);
    })
    .join('');
}

function swatch(x: number, y: number, part: number): string {
  return filledBox({ x, y, width: 10, height: 10 }, part);
}

function filledBox(box: { x: number; y: number; width: number; height: number }, part: number): string {
  const fill = part % 4;
  const frame = `<rect class="part p${fill}" x="${short(box.x)}" y="${short(box.y)}" width="${short(box.width)}" height="${short(box.height)}"/>`;
  if (fill === 1) return frame + svgPath(hatch(box, 5), 'stroke');
  if (fill === 2) return frame + svgPath(levelStrokes(box, 4), 'stroke');
  return frame;
}
