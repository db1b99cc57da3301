import { short, svgPath } from './svg-markup.ts';

const HALF = 4;
const TOOTH_WIDE = 3;
const TOOTH_HIGH = 20;

/** A strip of paper torn out of a drawing, from top to bottom, where bank is drawn shorter than it is. */
export function tornAt(x: number, top: number, bottom: number): string {
  const teeth = Math.ceil((bottom - top) / TOOTH_HIGH);
  const high = short((bottom - top) / teeth);
  const edge = (sign: '' | '-') =>
    Array.from({ length: teeth }, (_, i) => `${i % 2 === 0 ? TOOTH_WIDE : -TOOTH_WIDE},${sign}${high}`).join(' ');
  // Up again the teeth come in the other order, so that both edges lie alike.
  const up = teeth % 2 === 0 ? edge('-') : mirrored(edge('-'));
  return svgPath(`M${short(x - HALF)},${top}l${edge('')}h${2 * HALF}l${up}z`, 'tear');
}

function mirrored(steps: string): string {
  return steps
    .split(' ')
    .map((step) => (step.startsWith('-') ? step.slice(1) : `-${step}`))
    .join(' ');
}
