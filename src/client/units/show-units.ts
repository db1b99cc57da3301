import type { Units } from '../../domain/bag.ts';
import {
  bareWeightInOther,
  contourInOther,
  lengthsInOther,
  shortDepthInOther,
  weightsInOther,
} from '../../domain/unit-words.ts';

const FIGURES = '[data-figures], main .facts, [aria-labelledby="sky"] td';
/** Places of lengths alone, heads of tables among them. */
const LENGTHS =
  '[aria-labelledby="depth"] figcaption, .depths :is(caption, thead th, th small), .water-map .m-foot text, :is(.bank-strip, .piece) text:not([class])';
/** Depths on contours and beside the lines of a grid. */
const CONTOURS = '.water-map .m-depth, .bank-strip .scale, .depth-profile text[text-anchor="end"]';
/** The unit a table says of all its depths, in every language that sheets speak. */
const OF_ALL: readonly (readonly [m: string, ft: string])[] = [
  ['Depths in metres', 'Depths in feet and inches'],
  ['Dyfnder mewn metrau', 'Dyfnder mewn troedfeddi a modfeddi'],
];

/**
 * Shows the page's figures in the units the reader chose. Pages are written in the venue's; only places that say so
 * (`data-figures`) and those named here are told anew, so that a notice, a rule, a limit or a stand-off stays word for
 * word what the club wrote. Where both units stand, they change places.
 */
export function showUnits(own: Units, chosen: Units): void {
  const isWeight = own.weight !== chosen.weight;
  const isLength = own.length !== chosen.length;
  for (const place of document.querySelectorAll<HTMLElement>(FIGURES)) {
    const weights = (words: string, shown: Units['weight']) =>
      weightsInOther(words, shown, place.dataset.figures === 'weighed');
    for (const node of textsIn(place)) {
      if (isWeight) node.data = swapped(node.data, weights, own.weight, chosen.weight);
      if (isLength) node.data = swapped(node.data, lengthsInOther, own.length, chosen.length);
    }
  }
  if (isLength) for (const cell of document.querySelectorAll('.depths td, [data-strip-line]')) retoldDepth(cell, own);
  if (isLength) {
    for (const text of document.querySelectorAll(':is(.depth-profile, .bank-strip) .figure'))
      retold(text, (words) => shortDepthInOther(words, own.length));
    for (const text of document.querySelectorAll(CONTOURS)) retold(text, (words) => contourInOther(words, own.length));
    for (const place of document.querySelectorAll(LENGTHS)) {
      for (const node of textsIn(place, '[data-own]'))
        node.data = lengthsInOther(ofAllInOther(node.data, own), own.length);
    }
  }
  if (isWeight) {
    for (const text of document.querySelectorAll('.framing-year text')) {
      retold(text, (words) => (words === own.weight ? chosen.weight : bareWeightInOther(words, own.weight)));
    }
  }
}

/** Figures of the venue's unit become the reader's; where there are none, those in brackets beside them become the venue's. */
function swapped<Unit>(
  words: string,
  inOther: (words: string, shown: Unit) => string,
  own: Unit,
  chosen: Unit,
): string {
  const told = inOther(words, own);
  return told === words ? inOther(words, chosen) : told;
}

function ofAllInOther(words: string, own: Units): string {
  const [from, to] = own.length === 'm' ? ([0, 1] as const) : ([1, 0] as const);
  return OF_ALL.reduce((told, pair) => told.replace(pair[from], pair[to]), words);
}

function retold(text: Element, tell: (words: string) => string | null): void {
  const words = text.textContent ?? '';
  const told = tell(words);
  if (told !== null && told !== words) text.textContent = told;
}

/** A depth short and bold with the other unit beside it: the two change places, so that neither is rounded twice. */
function retoldDepth(cell: Element, own: Units): void {
  if (cell.closest('[data-own]') !== null) return;
  const short = [...cell.querySelectorAll('b'), cell].flatMap((each) => [...each.childNodes]).find(isShortDepth);
  if (short === undefined) return;
  const words = short.data.trim();
  const beside = cell.querySelector('small');
  short.data = `${shortDepthInOther(words, own.length) ?? words} `;
  if (beside !== null) beside.textContent = own.length === 'm' ? `${words} m` : words;

  function isShortDepth(node: ChildNode): node is Text {
    return node instanceof Text && shortDepthInOther(node.data.trim(), own.length) !== null;
  }
}

/** The words of a place, but for heads, which name a line ("11 m pole"), and for what a script wrote in the reader's units. */
function textsIn(place: Element, except = 'th, dt, option, [data-own]'): readonly Text[] {
  const walker = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
  const texts: Text[] = [];
  while (walker.nextNode()) {
    const text = walker.currentNode as Text;
    if (text.parentElement?.closest(except) === null) texts.push(text);
  }
  return texts;
}
