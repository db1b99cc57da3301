import type { Units } from '../../domain/bag.ts';
import { bareWeightInOther, lengthsInOther, shortDepthInOther, weightsInOther } from '../../domain/unit-words.ts';

/**
 * Shows the page's figures in the units the reader chose. Pages are written in the venue's; only places that say so
 * (`data-figures`, the depth table, two drawings) are told anew, so that a notice, a rule, a limit or a stand-off stays word for
 * word what the club wrote. Where both units stand, they change places.
 */
export function showUnits(own: Units, chosen: Units): void {
  const isWeight = own.weight !== chosen.weight;
  const isLength = own.length !== chosen.length;
  for (const place of document.querySelectorAll<HTMLElement>('[data-figures]')) {
    const weights = (words: string, shown: Units['weight']) =>
      weightsInOther(words, shown, place.dataset.figures === 'weighed');
    for (const node of textsIn(place)) {
      if (isWeight) node.data = swapped(node.data, weights, own.weight, chosen.weight);
      if (isLength) node.data = swapped(node.data, lengthsInOther, own.length, chosen.length);
    }
  }
  if (isLength) for (const cell of document.querySelectorAll('.depths td, [data-strip-line]')) retoldDepth(cell, own);
  if (isLength) {
    for (const text of document.querySelectorAll('.depth-profile .figure'))
      retold(text, (words) => shortDepthInOther(words, own.length));
    for (const text of document.querySelectorAll('.depth-profile text[text-anchor="end"]')) {
      retold(text, (words) => lengthsInOther(words, own.length));
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
function textsIn(place: Element): readonly Text[] {
  const walker = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
  const texts: Text[] = [];
  while (walker.nextNode()) {
    const text = walker.currentNode as Text;
    if (text.parentElement?.closest('th, dt, option, [data-own]') === null) texts.push(text);
  }
  return texts;
}
