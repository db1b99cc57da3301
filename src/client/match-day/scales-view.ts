import type { DayPeg } from '../../atlas/match-day-page.ts';
import { matchResults, type ResultRow } from '../../match-day/match-results.ts';
import { ABOUT, weighedIn } from '../../match-day/scales.ts';
import { button, make } from '../make.ts';
import type { MatchDay } from './match-day.ts';
import { unsavedWords } from './net-form.ts';
import { stateWords } from './said-words.ts';
import { scaleForm } from './scale-form.ts';

/** Which peg is open on the page. */
export interface OpenPeg {
  key: string | null;
}

/** The match as far as it has been weighed. */
export function resultsSoFar(day: MatchDay): readonly ResultRow[] {
  const sections = day.data.sections.map(({ name, pegs }) => ({ name, pegs: pegs.map(({ key }) => key) }));
  return matchResults(weighedIn(sections, day.standing), day.data.scoring);
}

/** The pegs by section in walking order, each with what the scales said; one at a time is open. */
export function scalesView(day: MatchDay, open: OpenPeg): HTMLElement {
  const results = resultsSoFar(day);
  const byPeg = new Map(results.map((row) => [row.peg, row]));
  return make(
    'div',
    {},
    ...day.data.sections.map(({ name, pegs }) => {
      const done = pegs.filter(({ key }) => day.scalesOf(key) !== null).length;
      return make(
        'section',
        {},
        make('h3', {}, `Section ${name}`, make('small', {}, `${done} of ${pegs.length} weighed in`)),
        make(
          'ol',
          { className: 'scale-pegs' },
          ...pegs.map((peg) => {
            const isOpen = open.key === peg.key;
            return make(
              'li',
              {},
              pegToggle(day, open, peg, byPeg.get(peg.key)),
              ...(isOpen ? [scaleForm(day, peg, results, nextKey(day, open, peg))] : []),
            );
          }),
        ),
      );
    }),
  );
}

function pegToggle(day: MatchDay, open: OpenPeg, peg: DayPeg, result: ResultRow | undefined): HTMLElement {
  const moved = day.movedTo(peg.key);
  const heads = day.standing.get(ABOUT.scales(peg.key)) ?? [];
  const isOpen = open.key === peg.key;
  const water = peg.name === peg.peg ? [] : [peg.water];
  const who = [...water, ...[day.holderOf(peg.key)].filter((name) => name !== '')].join(', ');
  const state = heads.length > 1 ? 'two phones differ' : stateWords(day, day.scalesOf(peg.key), result);
  const unsaved = isOpen ? '' : unsavedWords(day, peg.key);
  const toggle = make(
    'button',
    { type: 'button', className: 'scale-peg', ariaExpanded: String(isOpen) },
    make('b', {}, moved === null ? peg.peg : `${peg.peg} → ${day.nameOf(moved)}`),
    make('span', {}, who),
    make('span', { className: 'said' }, state),
    ...(unsaved === '' ? [] : [make('span', { className: 'unsaved' }, `typed and not saved: ${unsaved}`)]),
  );
  toggle.dataset.peg = peg.key;
  toggle.dataset.field = `open ${peg.key}`;
  toggle.addEventListener('click', () => {
    open.key = isOpen ? null : peg.key;
    void day.reload();
  });
  return toggle;
}

/** Opens the next peg along the bank that has not been to the scales; null where all have. */
function nextKey(day: MatchDay, open: OpenPeg, peg: DayPeg): HTMLElement | null {
  const pegs = day.pegs;
  const at = pegs.findIndex(({ key }) => key === peg.key);
  const next = [...pegs.slice(at + 1), ...pegs.slice(0, at)].find(({ key }) =>
    (day.standing.get(ABOUT.scales(key)) ?? []).every(({ value }) => value === null),
  );
  if (next === undefined) return null;
  const holder = day.holderOf(next.key);
  return button(`Next: ${next.name}${holder === '' ? '' : `, ${holder}`}`, () => {
    open.key = next.key;
    void day
      .reload()
      .then(() => document.querySelector(`[data-peg="${CSS.escape(next.key)}"]`)?.scrollIntoView({ block: 'start' }));
  });
}
