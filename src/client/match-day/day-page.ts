import type { MatchDayData } from '../../atlas/match-day-page.ts';
import { formatDay } from '../../domain/day.ts';
import { conflictsOf } from '../../match-day/match-log.ts';
import { localDay } from '../local-day.ts';
import { clockDoubt } from '../round/clock-doubt.ts';
import { requireElement } from '../round/elements.ts';
import { storageWords } from '../round/storage-words.ts';
import { drawView } from './draw-view.ts';
import { handOverView } from './hand-over-view.ts';
import { drawnInPlace } from './kept-input.ts';
import { MatchDay } from './match-day.ts';
import { MatchStore } from './match-store.ts';
import { resultsView } from './results-view.ts';
import { type OpenPeg, scalesView } from './scales-view.ts';
import { changesView, settleView } from './settle-view.ts';
import { stayAtFoot } from './stay-at-foot.ts';

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
  const draw = () => {
    requireElement('#settle').replaceChildren(settleView(day));
    requireElement('#day-changes').replaceChildren(changesView(day));
    requireElement('#day-draw').replaceChildren(drawView(day));
    requireElement('#day-scales').replaceChildren(scalesView(day, open));
    requireElement('#day-results').replaceChildren(resultsView(day));
    const differing = conflictsOf(day.standing).length;
    const saved = requireElement('#day-saved');
    saved.textContent =
      day.trouble !== ''
        ? day.trouble
        : `${day.notes.length} ${day.notes.length === 1 ? 'note' : 'notes'} kept${differing === 0 ? '' : ` · ${differing} to be settled`}`;
    saved.classList.toggle('notice', day.trouble !== '');
  };
  const kept = { notes: await store.notes(), typed: await store.typed() };
  const day = new MatchDay(data, store, kept, () => drawnInPlace(draw));
  draw();
  requireElement('#day-hand-over').replaceChildren(handOverView(day));
  requireElement('#day-clock').textContent = clockWords(data);
  requireElement('#day-storage').textContent = await storageWords(navigator.storage, 'match');
  // Shown once it stands whole, so that nothing moves under a finger.
  requireElement('#day').hidden = false;
  stayAtFoot(
    requireElement('#day-parts'),
    document.querySelector('.help-strip'),
    requireElement<HTMLElement>('.saved'),
  );
  // Another tab, or this page come back to from another app, may have noted more.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible' && open.key === null) void day.reload();
  });
}

/** What speaks against this phone's clock; nothing depends on it but the times beside what is noted. */
function clockWords({ day, guideDay }: MatchDayData): string {
  const now = new Date();
  const doubt = clockDoubt(now, { guideDay });
  const today = localDay(now);
  if (doubt === null && today === day) return '';
  const says = doubt ?? `By this phone’s clock it is ${formatDay(today)}, and the match is on ${formatDay(day)}.`;
  return `${says} Everything can be noted all the same: only the times beside it will be those of that clock, and no clock decides between two phones.`;
}

void begin();
