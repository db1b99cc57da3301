import { pathThrough, short, stroke, svgElement, svgPath, svgText } from './svg-markup.ts';

/** Of bags forecast to be this low or lower with a stated chance, the share that were. Both 0 to 1. */
export interface CalibrationPoint {
  readonly stated: number;
  readonly happened: number;
}

const SIZE = 200;
const LEFT = 44;
const TOP = 8;

/**
 * Stated chance along, share that happened up. On the slanting line a forecast means what it says; the dots are joined
 * so that a bend (too sure, too unsure) shows.
 */
export function calibration(points: readonly CalibrationPoint[], label: string): string {
  const across = (share: number) => LEFT + SIZE * share;
  const up = (share: number) => TOP + SIZE * (1 - share);
  const frame = [0, 0.25, 0.5, 0.75, 1].map((share) => {
    const words = `${share * 100}%`;
    const lines =
      stroke(across(share), up(0), across(share), up(1)) + stroke(across(0), up(share), across(1), up(share));
    return (
      svgPath(lines, 'rule') +
      svgText(across(share), up(0) + 16, words) +
      svgText(LEFT - 6, up(share) + 4, words, 'end')
    );
  });
  const ideal = svgPath(stroke(across(0), up(0), across(1), up(1)), 'par');
  const places = points.map(({ stated, happened }) => [across(stated), up(happened)] as const);
  const joined = svgPath(pathThrough(places), 'whisker');
  const dots = places.map(([x, y]) => `<circle class="dot" cx="${short(x)}" cy="${short(y)}" r="4.5"/>`);
  const names =
    svgText(across(0.5), up(0) + 33, 'stated chance') +
    svgText(across(0) + 6, TOP + 14, 'share that happened', 'start', 'said');
  return svgElement(
    { width: LEFT + SIZE + 20, height: TOP + SIZE + 38, label, kind: 'calibration' },
    frame.join('') + ideal + joined + dots.join('') + names,
  );
}
