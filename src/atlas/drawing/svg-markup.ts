/** What a drawing is made of: its size in user units, the words that stand for it, and the classes its colours hang on. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  /** The text alternative: it carries the numbers. Left out where the text beside the drawing already says them. */
  readonly label?: string;
  /** Extra class beside `chart`. */
  readonly kind: string;
}

/** A whole SVG element. Without a label it is hidden from screen readers, as a mere repetition of the text beside it. */
export function svgElement(sheet: Sheet, body: string): string {
  const meaning =
    sheet.label === undefined ? 'aria-hidden="true"' : `role="img" aria-label="${escapeMarkup(sheet.label)}"`;
  const size = `viewBox="0 0 ${short(sheet.width)} ${short(sheet.height)}"`;
  return `<svg class="chart ${sheet.kind}" ${size} ${meaning}>${body}</svg>`;
}

/** A number of user units with one decimal at most: a tenth of a unit cannot be seen, and its digits cost bytes. */
export function short(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  return Object.is(rounded, -0) ? '0' : String(rounded);
}

/** Text made safe inside an element or a quoted attribute. */
export function escapeMarkup(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

/** Words at a place; the style sheet sets their size. `anchor` is where the place lies in them. */
export function svgText(
  x: number,
  y: number,
  words: string,
  anchor: 'start' | 'middle' | 'end' = 'middle',
  className?: string,
): string {
  const where = anchor === 'middle' ? '' : ` text-anchor="${anchor}"`;
  const what = className === undefined ? '' : ` class="${className}"`;
  return `<text x="${short(x)}" y="${short(y)}"${where}${what}>${escapeMarkup(words)}</text>`;
}

/** A path through points, in relative steps; closed where `closed`. Empty without points. */
export function pathThrough(points: readonly (readonly [number, number])[], closed = false): string {
  const [first, ...rest] = points.map(([x, y]) => [Math.round(x * 10), Math.round(y * 10)] as const);
  if (first === undefined) return '';
  let [lastX, lastY] = first;
  const steps = rest.map(([x, y]) => {
    const step = `${(x - lastX) / 10},${(y - lastY) / 10}`;
    [lastX, lastY] = [x, y];
    return step;
  });
  return `M${first[0] / 10},${first[1] / 10}${steps.length > 0 ? `l${steps.join(' ')}` : ''}${closed ? 'z' : ''}`;
}

/** A path element of one class. */
export function svgPath(d: string, className: string): string {
  return d === '' ? '' : `<path class="${className}" d="${d}"/>`;
}

/** An upright or level stroke from one place to another, as a path. */
export function stroke(x1: number, y1: number, x2: number, y2: number): string {
  if (x1 === x2) return `M${short(x1)},${short(y1)}V${short(y2)}`;
  if (y1 === y2) return `M${short(x1)},${short(y1)}H${short(x2)}`;
  return `M${short(x1)},${short(y1)}L${short(x2)},${short(y2)}`;
}
