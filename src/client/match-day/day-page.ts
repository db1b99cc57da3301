import type { MatchDayData } from '../../atlas/match-day-page.ts';
import { conflictsOf } from '../../match-day/match-log.ts';
import { requireElement } from '../round/elements.ts';
import { storageWords } from '../round/storage-words.ts';
import { MatchDay } from './day.ts';
import { drawView } from './draw-view.ts';
import { handOverView } from './hand-over-view.ts';
import { MatchStore } from './match-store.ts';
import { resultsView } from './results-view.ts';
import { type OpenPeg, scalesView } from './scales-view.ts';

/** The match day on the organiser's phone: draw, scales, results, and what is handed over. */
async function begin(): Promise<void> {
  const data = JSON.parse(requireElement('#match-data').textContent) as MatchDayData;
  let store: MatchStore;
  try {
    store = await MatchStore.open(document.body.dataset.guideBase ?? '/', data.match);
  } catch {
    requireElement('#day-none').hidden = false;
    return;
  }
  const open: OpenPeg = { key: null };
  const pot = { coins: 0 };
  const draw = () => {
    requireElement('#day-draw').replaceChildren(drawView(day));
    requireElement('#day-scales').replaceChildren(scalesView(day, open));
    requireElement('#day-results').replaceChildren(resultsView(day, pot));
    const differing = conflictsOf(day.standing).length;
    requireElement('#day-saved').textContent =
      `${day.notes.length} notes kept on this phone (${day.phone})${differing === 0 ? '' : ` · ${differing} to be settled: two phones differ`}`;
  };
  const day = new MatchDay(data, store, await store.notes(), () => {
    const [x, y] = [scrollX, scrollY];
    draw();
    scrollTo(x, y);
  });
  draw();
  requireElement('#day-hand-over').replaceChildren(handOverView(day));
  requireElement('#day').hidden = false;
  // Another tab, or this page come back to from another app, may have noted more.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible' && open.key === null) void day.reload();
  });
  requireElement('#day-storage').textContent = (await storageWords()).replace(
    'Hand the round over the same day.',
    'Hand the match over the same day.',
  );
}

void begin();
