import { short, stroke, svgElement, svgPath, svgText } from './svg-markup.ts';

/** The share of a bag that comes in one hour, and how far it may be off where that is known. */
export interface HourBar {
  readonly share: number;
  readonly interval: readonly [low: number, high: number] | null;
}

const SLOT = 44;
const LEFT = 40;
const TOP = 8;
const PANEL = 84;

/** Shares of a bag by hour as bars from nothing, the interval a fine line through each; thin ones hollow. */
export function hourBars(shares: readonly HourBar[], isThin: boolean, label: string): string {
  const most = Math.max(0.5, ...shares.map(({ share, interval }) => interval?.[1] ?? share));
  const base = TOP + PANEL;
  const at = (share: number) => short(base - (PANEL * share) / most);
  const width = LEFT + SLOT * shares.length + 4;
  const bars = shares.map(({ share, interval }, index) => {
    const middle = LEFT + SLOT * (index + 0.5);
    const rect = `<rect x="${short(middle - 11)}" y="${at(share)}" width="22" height="${short((PANEL * share) / most)}"/>`;
    const [low, high] = interval ?? [];
    const reach =
      low === undefined || high === undefined
        ? ''
        : `<path class="reach" d="M${short(middle)},${at(low)}V${at(high)}M${short(middle - 3)},${at(low)}h6M${short(middle - 3)},${at(high)}h6"/>`;
    const figure = svgText(middle, base + 31, `${Math.round(share * 100)}%`);
    return `<g class="bar ${isThin ? 'thin' : 'solid'}">${rect}${reach}${svgText(middle, base + 16, String(index + 1), 'middle', 'letter')}${figure}</g>`;
  });
  const axis = svgPath(stroke(LEFT, base, width, base), 'par') + svgText(LEFT - 5, base + 16, 'hour', 'end');
  return svgElement({ width, height: base + 36, label, kind: 'hour-bars' }, axis + bars.join(''));
}
