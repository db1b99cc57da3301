import type { Point } from './simplify-line.ts';

/** Path data through points on whole units, in relative steps, points that fall together written once. */
export function mapPath(points: readonly Point[], closed = false): string {
  let [lastX, lastY] = [Number.NaN, Number.NaN];
  let path = '';
  for (const [exactX, exactY] of points) {
    const [x, y] = [Math.round(exactX), Math.round(exactY)];
    if (x === lastX && y === lastY) continue;
    if (path === '') path = `M${x} ${y}l`;
    else path += step(x - lastX, y - lastY, path.endsWith('l'));
    [lastX, lastY] = [x, y];
  }
  const drawn = path.endsWith('l') ? path.slice(0, -1) : path;
  return closed && drawn !== '' ? `${drawn}z` : drawn;
}

/** Two numbers in as few bytes as SVG allows: a minus sign parts numbers by itself. */
function step(dx: number, dy: number, first: boolean): string {
  const lead = first || dx < 0 ? '' : ' ';
  return `${lead}${dx}${dy < 0 ? '' : ' '}${dy}`;
}
