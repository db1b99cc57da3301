import { escapeMarkup } from './svg-markup.ts';

/** The kind of a mark that warns of what was found there; its name says what. */
export const FINDING = 'finding';

/** A thing at one point of a map. */
export interface PlaceMark {
  readonly kind: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

/** What stands in the mark; a kind without words has a shape of its own. */
const WORDS: Readonly<Record<string, string>> = {
  'car-park': 'P',
  gate: 'gate',
  aed: 'AED',
  lodge: 'lodge',
  toilet: 'WC',
  inlet: 'in',
  outlet: 'out',
  gauge: 'gauge',
};

/** About the advance of one letter of the mark's type, in user units. */
const LETTER = 22;

/** Half the width of a mark. */
export function placeRadius({ kind }: Pick<PlaceMark, 'kind'>): number {
  const words = WORDS[kind];
  return words === undefined ? 22 : Math.round((words.length * LETTER) / 2) + 10;
}

/**
 * A plate with a short word, a ring for a throw line, a wheel for an aerator, a warning triangle for what was found; its
 * middle stands at `x`, `y`.
 */
export function placeMark({ kind, name }: PlaceMark, [x, y]: readonly [number, number]): string {
  if (kind === FINDING) return findingMark(name, x, y);
  const at = `transform="translate(${Math.round(x)} ${Math.round(y)})"`;
  const title = `<title>${escapeMarkup(name)}</title>`;
  const words = WORDS[kind];
  if (words === undefined) {
    const spokes = kind === 'aerator' ? '<path d="M-22 0H22M0-22V22M-16-16L16 16M-16 16L16-16"/>' : '';
    const ring =
      kind === 'throw-line' ? '<circle r="20"/><circle r="9"/><path d="M-20 0h11M9 0h11M0-20v11M0 9v11"/>' : '';
    return `<g class="m-place m-${kind}" ${at}>${title}${spokes}${ring}</g>`;
  }
  const half = placeRadius({ kind });
  return `<g class="m-place m-${kind}" ${at}>${title}<path d="M-${half}-26h${half * 2}v52h-${half * 2}z"/><text y="14">${words}</text></g>`;
}

/** In the shape of a warning sign (ISO 3864-1), told by its shape where there is no colour. */
function findingMark(words: string, x: number, y: number): string {
  const said = escapeMarkup(words);
  return `<g class="m-finding" role="img" aria-label="${said}" transform="translate(${Math.round(x)} ${Math.round(y)})"><title>${said}</title><path d="M-30 24L0-28L30 24z"/><path d="M0-10V8M0 14V18"/></g>`;
}
