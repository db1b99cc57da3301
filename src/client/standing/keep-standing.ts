import { formatDay } from '../../domain/day.ts';
import { newestNow } from '../../domain/now-file.ts';
import { pathBelow } from '../offline/page-address.ts';
import { closedSince, type PageState, type StandingLine, standingLines } from '../offline/standing.ts';
import { readDays } from '../read-days.ts';
import { askState, type OpenPage } from './ask-state.ts';
import { markClosed } from './mark-closed.ts';

/**
 * Keeps what an open page says of itself true: what has closed since it was made, how old it is, whether it was checked.
 * It asks when the page opens, when the reader comes back to it, when the signal does, and when a newer guide was taken up.
 */
const { guideBase, guideDay, mark, copy } = document.body.dataset;
const page: OpenPage = {
  base: guideBase ?? '/',
  path: pathBelow(guideBase ?? '/', location.pathname) ?? '',
  day: guideDay ?? '',
  mark: mark ?? '',
  copy,
};
/** A peg once shown as closed stays so while the page is open. */
const closed = new Set<string>();
const SETTLED_MILLISECONDS = 3000;
const ASKED_AGAIN_MILLISECONDS = 15 * 60_000;

if (import.meta.env.PROD) {
  const ask = () => void askState(page).then((state) => (isUnsettled(state) ? askAgain(state) : show(state)));
  // A guide that is being taken up fits no page for a moment: only what lasts is said, but what is closed is marked at once.
  const askAgain = (state: PageState) => {
    noteClosed(state);
    showEdition(state);
    setTimeout(() => void askState(page).then(show), SETTLED_MILLISECONDS);
  };
  ask();
  addEventListener('online', ask);
  addEventListener('pageshow', (event) => (event as PageTransitionEvent).persisted && ask());
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && ask());
  navigator.serviceWorker?.addEventListener('message', ask);
  document.addEventListener('pegs-shown', () => markClosed(document, page.base, closed));
  setInterval(ask, ASKED_AGAIN_MILLISECONDS);
}

function isUnsettled(state: PageState | null): state is PageState {
  return state?.isChecked === true && state.page === null;
}

function show(state: PageState | null): void {
  if (state === null) return;
  showLines(standingLines(state, readDays()[0]));
  noteClosed(state);
  showEdition(state);
}

/** Marks what is closed wherever the page shows it. */
function noteClosed(state: PageState): void {
  for (const day of readDays()) for (const peg of closedSince(state, day)) closed.add(peg);
  markClosed(document, page.base, closed);
  if (closed.size > 0) document.dispatchEvent(new Event('pegs-marked'));
}

function showLines(lines: readonly StandingLine[]): void {
  const place = document.querySelector('[data-standing]');
  if (place === null) return;
  place.classList.toggle('standing', lines.length > 0);
  place.replaceChildren(
    ...lines.map(({ kind, strong, words }) => {
      const line = document.createElement('p');
      line.dataset.standingKind = kind;
      const first = document.createElement('strong');
      first.textContent = `${strong}.`;
      line.append(first, ` ${words}`);
      return line;
    }),
  );
}

/** "· edition 3f9a2c1b, checked 14:32 · ready without a signal". */
function showEdition({ page: edition, isChecked, lastCheck, seen, whole, part }: PageState): void {
  const place = document.querySelector('[data-edition]');
  if (place === null) return;
  const newest = newestNow(seen);
  const isOfNewest = edition !== null && edition.edition === newest?.edition;
  place.textContent = [
    edition !== null && isOfNewest ? `edition ${edition.edition.slice(0, 8)}` : '',
    isChecked && isOfNewest ? `checked ${clock(lastCheck ?? Date.now())}` : '',
    whole && whole.missing === 0 ? `ready without a signal, data to ${formatDay(whole.day)}` : '',
    whole && whole.missing > 0 ? `${whole.missing} pages are not on this phone` : '',
    part === null ? '' : `${part.have} of ${part.need} files kept`,
  ]
    .filter((words) => words !== '')
    .map((words) => `· ${words}`)
    .join(' ');
  if (whole && whole.missing > 0) offerAll(place);
}

/** The reader may have the whole guide though the browser saves data. */
function offerAll(place: Element): void {
  const keep = document.createElement('button');
  keep.textContent = 'Keep them too';
  keep.addEventListener('click', () => {
    keep.replaceWith('fetching them');
    navigator.serviceWorker.controller?.postMessage('keep-all');
  });
  place.append(' ', keep);
}

function clock(time: number): string {
  const date = new Date(time);
  return `${String(date.getHours()).padStart(2, '0')}:${String(date.getMinutes()).padStart(2, '0')}`;
}
