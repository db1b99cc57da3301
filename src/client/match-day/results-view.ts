import { csvLine } from '../../content/intake/csv-line.ts';
import { conflictsOf } from '../../match-day/match-log.ts';
import { type ResultRow, WON_WORDS } from '../../match-day/match-results.ts';
import { potShares } from '../../match-day/pot-shares.ts';
import { STATUS_WORDS } from '../../match-day/weighed-in.ts';
import { button, make } from '../make.ts';
import { downloadFile } from '../round/hand-over.ts';
import { keptInput } from './kept-input.ts';
import type { MatchDay } from './match-day.ts';
import { resultsSoFar } from './scales-view.ts';
import { weightWords } from './weights.ts';

/** The order of the match and of its sections as far as it has been weighed, for the screen, the printer and a table. */
export function resultsView(day: MatchDay): HTMLElement {
  const rows = resultsSoFar(day);
  if (rows.length === 0) return make('p', { className: 'soft' }, 'No peg has been to the scales yet.');
  const open = day.pegs.length - rows.length;
  const differing = conflictsOf(day.standing).length;
  return make(
    'div',
    {},
    make(
      'p',
      { className: open + differing === 0 ? 'soft' : 'notice' },
      open + differing === 0
        ? `All ${rows.length} pegs have been to the scales.`
        : `${open} of ${day.pegs.length} pegs have not been to the scales${differing === 0 ? '' : `; of ${differing} things two phones say different`}. The order is as far as it goes.`,
    ),
    table(day, rows),
    ...potView(day, rows),
    make(
      'p',
      { className: 'soft not-printed' },
      day.data.namesAgreed
        ? 'The members agreed to stand on paper by name. Nothing with names goes into the guide.'
        : 'On paper and in the table there are no names: the match’s file does not say that the members agreed (names-agreed).',
    ),
    button('Print the results', () => print()),
    button('Save the results as a table', () => void downloadFile(resultsCsv(day, rows))),
  );
}

function table(day: MatchDay, rows: readonly ResultRow[]): HTMLElement {
  const hasNames = rows.some(({ peg }) => day.holderOf(peg) !== '');
  const cell = (text: string, head: string) => {
    const made = make('td', { className: head === 'won' ? 'won' : '' }, text);
    // Where the letters are so large that a bag is a paragraph, each cell says itself what it is.
    if (head === 'peg' || head === 'points') made.dataset.head = head;
    return made;
  };
  return make(
    'section',
    { className: 'wide', tabIndex: 0, ariaLabel: 'Table of results' },
    make(
      'table',
      { className: day.data.namesAgreed ? 'results' : 'results names-on-screen' },
      make(
        'thead',
        {},
        make(
          'tr',
          {},
          ...['place', 'peg', ...(hasNames ? ['name'] : []), 'weight', 'section', 'points', 'won'].map((head) =>
            make('th', { scope: 'col', className: head === 'name' || head === 'won' ? head : '' }, head),
          ),
        ),
      ),
      make(
        'tbody',
        {},
        ...rows.map((row) =>
          make(
            'tr',
            {},
            make('th', { scope: 'row' }, row.overallPlace === null ? '' : String(row.overallPlace)),
            cell(day.nameOf(day.movedTo(row.peg) ?? row.peg), 'peg'),
            ...(hasNames ? [make('td', { className: 'name' }, day.holderOf(row.peg))] : []),
            cell(
              row.status === 'weighed' ? weightWords(row.grams, day.data.weightUnit) : STATUS_WORDS[row.status].name,
              'weight',
            ),
            cell(row.sectionPlace === null ? row.section : `${row.section} ${row.sectionPlace}`, 'section'),
            cell(String(row.points), 'points'),
            cell(row.won === null ? '' : WON_WORDS[row.won], 'won'),
          ),
        ),
      ),
    ),
  );
}

/** Shares of the pot: a sum typed here, by the parts of the match's file. Arithmetic only. */
function potView(day: MatchDay, rows: readonly ResultRow[]): HTMLElement[] {
  if (day.data.pot.length === 0) return [];
  const input = keptInput(day, 'pot', { inputMode: 'decimal' });
  input.addEventListener('change', () => void day.reload());
  const typed = input.value.trim();
  const isSum = /^\d{1,6}(?:\.\d{1,2})?$/.test(typed);
  const coins = isSum ? Math.round(Number(typed) * 100) : 0;
  const placed = rows.filter(({ won }) => won === 'frame');
  const shares = potShares(
    coins,
    placed.map(({ overallPlace }) => overallPlace!),
    day.data.pot,
  );
  return [
    make('h3', { className: coins === 0 ? 'not-printed' : '' }, 'Shares of the pot'),
    make('label', { className: 'field not-printed' }, `The pot, shared ${day.data.pot.join(' : ')}`, input),
    ...(typed === '' || isSum ? [] : [make('p', { className: 'why' }, 'A sum such as 120 or 87.50, below a million.')]),
    ...(coins === 0
      ? []
      : [
          make(
            'ol',
            {},
            ...placed.map((row, i) =>
              make(
                'li',
                {},
                `${[day.nameOf(row.peg), day.holderOf(row.peg)].filter((word) => word !== '').join(', ')}: ${((shares[i] ?? 0) / 100).toFixed(2)}`,
              ),
            ),
          ),
        ]),
    make('p', { className: 'soft not-printed' }, 'Arithmetic alone: nothing is paid by this page.'),
  ];
}

function resultsCsv(day: MatchDay, rows: readonly ResultRow[]): File {
  const lines = rows.map((row) =>
    csvLine([
      row.overallPlace === null ? '' : String(row.overallPlace),
      day.nameOf(day.movedTo(row.peg) ?? row.peg),
      ...(day.data.namesAgreed ? [day.holderOf(row.peg)] : []),
      row.section,
      row.sectionPlace === null ? '' : String(row.sectionPlace),
      String(row.points),
      row.status,
      row.status === 'weighed' ? weightWords(row.grams, day.data.weightUnit) : '',
    ]),
  );
  const head = `place,peg,${day.data.namesAgreed ? 'name,' : ''}section,section_place,points,status,weight`;
  const text = [head, ...lines].join('\r\n');
  return new File([`${text}\r\n`], `results-${day.data.match}.csv`, { type: 'text/csv' });
}
