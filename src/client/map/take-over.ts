import { savesData } from '../saves-data.ts';
import { askedPeg } from './asked-peg.ts';
import type { LiveMap } from './live-map.ts';

/**
 * The drawn map stays until the reader asks for more: a button, or a tap on the water, lays one over it that can be moved,
 * zoomed and located on. The library is fetched only then; where that fails, the drawn map stays as it is and says so.
 * Who tapped the little map of a peg's sheet has asked already: the way to that peg is drawn at once.
 */
for (const frame of document.querySelectorAll<HTMLElement>('[data-map]')) offerLiveMap(frame);

function offerLiveMap(frame: HTMLElement): void {
  const row = frame.parentElement?.querySelector('.locate-row');
  if (!row) return;
  const said = document.createElement('span');
  said.setAttribute('role', 'status');
  let started: Promise<LiveMap> | null = null;
  const start = (): Promise<LiveMap> => {
    started ??= import('./live-map.ts').then(({ showLiveMap }) => showLiveMap(frame, said));
    started.then(
      () => move.remove(),
      () => {
        started = null;
        said.textContent = 'The movable map did not load; the drawn one is complete without it.';
      },
    );
    return started;
  };
  const move = button('Move and zoom the map', () => void start().catch(() => undefined));
  row.append(move);
  if ('geolocation' in navigator)
    row.append(
      button(
        'Where am I?',
        () =>
          void start().then(
            (live) => live.locate(),
            () => undefined,
          ),
      ),
    );
  row.append(said);
  // Who saves data is fetched nothing without a tap on this page.
  if (askedPeg(location.hash) !== null && !savesData()) start().catch(() => undefined);
  frame.addEventListener('click', ({ target }) => {
    if (started === null && target instanceof Element && target.closest('a') === null) move.click();
  });
}

function button(words: string, run: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.textContent = words;
  made.addEventListener('click', run);
  return made;
}
