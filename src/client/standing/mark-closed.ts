import { pathBelow, pegOfPath } from '../offline/page-address.ts';
import { setShown } from '../verdict-of-day.ts';

/**
 * Marks every link to the sheet of a peg that has closed since the page was made: in lists and tables, on the drawn map
 * and on the live one. A mark is never taken away again while the page is open.
 */
export function markClosed(root: ParentNode, base: string, closed: ReadonlySet<string>): void {
  if (closed.size === 0) return;
  for (const link of root.querySelectorAll<HTMLAnchorElement | SVGAElement>('a[href]:not(.closed-now)')) {
    const address = new URL(link.getAttribute('href') ?? '', location.href);
    const path = address.origin === location.origin ? pathBelow(base, address.pathname) : null;
    const peg = path === null ? null : pegOfPath(path);
    if (peg === null || !closed.has(peg)) continue;
    link.classList.add('closed-now');
    showClosed(link);
  }
}

function showClosed(link: HTMLAnchorElement | SVGAElement): void {
  const { closedClass } = link.dataset;
  if (closedClass !== undefined) link.classList.add(closedClass);
  // What the page's own facts say of a day no longer counts.
  link.removeAttribute('data-verdict');
  const parts = link.querySelectorAll<HTMLElement | SVGElement>('[data-when]');
  for (const part of parts) setShown(part, part.dataset.when === 'closed');
  const label = link.getAttribute('aria-label');
  if (label !== null && !label.includes('closed')) link.setAttribute('aria-label', `${label}, closed`);
  if (link instanceof SVGElement) drawClosed(link);
  else if (link.closest('.live-peg') !== null) link.parentElement?.classList.add('is-closed');
  else if (parts.length === 0 && !link.textContent.includes('closed') && !isSaidBeside(link)) sayClosed(link);
}

/** Whether the row or entry a link stands in shows its words for a closed peg: once is enough. */
function isSaidBeside(link: HTMLElement): boolean {
  const entry = link.closest<HTMLElement>('tr, li');
  if (entry === null) return false;
  const words = [entry, ...entry.querySelectorAll<HTMLElement>('[data-when="closed"], .closed-words')];
  return words.some(
    ({ dataset, classList, hidden }) => (dataset.when === 'closed' || classList.contains('closed-words')) && !hidden,
  );
}

function sayClosed(link: HTMLAnchorElement): void {
  const said = document.createElement('small');
  said.className = 'closed-word';
  said.textContent = 'closed';
  link.append(' ', said);
}

/** A drawing's own sign for a closed peg: a filled notch, or on the map a filled square in place of the roundel. */
function drawClosed(link: SVGAElement): void {
  if (link.classList.contains('b-peg')) {
    link.classList.add('b-closed');
    return;
  }
  link.classList.add('m-closed');
  const square = document.createElementNS('http://www.w3.org/2000/svg', 'path');
  square.setAttribute('d', 'M-34-34h68v68h-68z');
  link.querySelector('circle:not([data-when])')?.replaceWith(square);
}
