import type { Day } from '../domain/day.ts';
import { type ClosedVerdict, type PegFacts, type PegVerdict, verdictOnDays } from '../domain/peg-verdict.ts';
import { closedBecause, closedHeadline, closedReason, pegLabel } from '../domain/verdict-words.ts';

/** What a page may say of a closed peg, by the name it asks for it with. */
const WORDS: Readonly<Record<string, (verdict: ClosedVerdict) => string>> = {
  headline: closedHeadline,
  because: closedBecause,
  reason: closedReason,
};

/**
 * Shows what is closed on the days a page is read for. An element with `data-verdict` carries a peg's facts; in it and on it
 * - `data-closed-class` names the class it has while the peg is closed;
 * - `data-when` (`closed`, `open`) is shown in that state alone;
 * - `data-say` is filled with words of the closure;
 * - `data-label` with the peg's name keeps its `aria-label`.
 */
export function showVerdicts(days: readonly [Day, ...Day[]], root: ParentNode = document): void {
  for (const element of root.querySelectorAll<HTMLElement | SVGElement>('[data-verdict]')) {
    const verdict = verdictOnDays(JSON.parse(element.dataset.verdict ?? '{}') as PegFacts, days);
    show(element, verdict);
    for (const part of element.querySelectorAll<HTMLElement | SVGElement>('[data-when], [data-say]'))
      show(part, verdict);
  }
}

function show(element: HTMLElement | SVGElement, verdict: PegVerdict): void {
  const { closedClass, when, say, label } = element.dataset;
  const isClosed = verdict.state === 'closed';
  if (closedClass !== undefined) element.classList.toggle(closedClass, isClosed);
  if (when !== undefined) setShown(element, (when === 'closed') === isClosed);
  if (say !== undefined && isClosed) element.textContent = WORDS[say]?.(verdict) ?? '';
  if (label !== undefined) element.setAttribute('aria-label', pegLabel(label, verdict));
}

/** Shows or hides a part of a page: `hidden` is for HTML alone. */
export function setShown(element: HTMLElement | SVGElement, isShown: boolean): void {
  if (element instanceof HTMLElement) element.hidden = !isShown;
  else if (isShown) element.removeAttribute('display');
  else element.setAttribute('display', 'none');
}
