import type { DayPeg } from '../../atlas/match-day-page.ts';
import type { ResultRow } from '../../match-day/match-results.ts';
import { ABOUT, type Net, type OnScales, partGrams, totalGrams } from '../../match-day/scales.ts';
import { STATUS_WORDS, type WeighedStatus } from '../../match-day/weighed-in.ts';
import { button, make } from '../make.ts';
import { keptInput } from './kept-input.ts';
import type { MatchDay } from './match-day.ts';
import { netFields, netForm } from './net-form.ts';
import { historyView, netWords } from './said-words.ts';
import { weightWords } from './weights.ts';

type Save = (
  status: WeighedStatus,
  nets: readonly Net[],
  fish: Readonly<Record<string, number>>,
  fields?: readonly string[],
) => void;

/** What may be noted of the peg that is open on the scales. */
export function scaleForm(
  day: MatchDay,
  peg: DayPeg,
  results: readonly ResultRow[],
  next: HTMLElement | null,
): HTMLElement {
  const about = ABOUT.scales(peg.key);
  const said = day.scalesOf(peg.key);
  const limits = day.limitsOf(peg.key);
  const heads = day.standing.get(about) ?? [];
  const save: Save = (status, nets, fish, fields = []) => void day.note(about, { status, nets, fish }, fields);
  const others = results.filter((row) => row.peg !== peg.key && row.grams > 0).map(({ grams }) => grams);
  return make(
    'div',
    { className: 'scale-form' },
    ...(peg.closed === '' || day.movedTo(peg.key) !== null
      ? []
      : [make('p', { className: 'notice' }, `May not be fished: closed ${peg.closed}.`)]),
    ...(limits === '' ? [] : [make('p', {}, make('b', {}, `Fished within a limit: ${limits}.`))]),
    ...(heads.length > 1
      ? [
          make(
            'p',
            {},
            make('a', { href: '#settle' }, 'Two phones say different things of this peg: choose which is right.'),
          ),
        ]
      : [
          ...netList(said, day, save, () => void day.note(about, null)),
          ...(said === null || next === null ? [] : [next]),
          netForm(day, peg, said, others, (nets, fields) => save('weighed', nets, said?.fish ?? {}, fields)),
          ...fishForm(day, peg, said, save),
          statusKeys(day, peg, said, save),
          ...(said === null ? [] : [button('Take it all back', () => void day.note(about, null))]),
          movedForm(day, peg),
        ]),
    historyView(day, about),
  );
}

function netList(said: OnScales | null, day: MatchDay, save: Save, takeBack: () => void): HTMLElement[] {
  if (said?.status !== 'weighed') return [];
  return [
    make(
      'ol',
      { className: 'nets' },
      ...said.nets.map((net, i) => {
        const rest = said.nets.filter((_, k) => k !== i);
        const take = button('Take out', () => (rest.length === 0 ? takeBack() : save('weighed', rest, said.fish)));
        return make('li', {}, make('span', {}, netWords(day, net)), take);
      }),
    ),
    make(
      'p',
      {},
      make('b', {}, `Together ${weightWords(totalGrams(said), day.data.weightUnit)}`),
      partsWords(day, said),
    ),
  ];
}

/** What each part weighs, or why that stays open; empty in a club that weighs all together. */
function partsWords(day: MatchDay, said: OnScales): string {
  if (said.nets.every(({ part }) => part === null)) return '';
  const parts = partGrams(
    said,
    day.data.parts.map(({ id }) => id),
  );
  if (parts === null) {
    return ': one net may hold anything, so the weights of the parts stay open. Take it out and weigh it apart, or leave it so.';
  }
  const words = day.data.parts.map(
    ({ id, name }) =>
      `${name.toLowerCase()} ${parts[id] === 0 ? 'none' : weightWords(parts[id]!, day.data.weightUnit)}`,
  );
  return `: ${words.join(', ')}`;
}

function statusKeys(day: MatchDay, peg: DayPeg, said: OnScales | null, save: Save): HTMLElement {
  return make(
    'div',
    { className: 'scale-statuses' },
    ...(['blank', 'dnw', 'absent', 'disqualified'] as const).map((status) => {
      const made = button(
        STATUS_WORDS[status].name,
        () => save(status, [], {}, netFields(day, peg.key)),
        said?.status === status,
      );
      made.append(make('small', {}, STATUS_WORDS[status].means));
      made.dataset.status = status;
      made.dataset.field = `${peg.key} ${status}`;
      return made;
    }),
  );
}

function fishForm(day: MatchDay, peg: DayPeg, said: OnScales | null, save: Save): HTMLElement[] {
  if (said?.status !== 'weighed') return [];
  const why = make('p', { className: 'why', role: 'alert', id: 'fish-why' });
  const count = (part: string) => {
    const field = `${peg.key} fish ${part}`;
    const input = keptInput(day, field, {
      inputMode: 'numeric',
      value: said.fish[part] === undefined ? '' : String(said.fish[part]),
    });
    input.addEventListener('change', () => {
      const { [part]: _, ...rest } = said.fish;
      const typed = input.value.trim();
      const isCount = /^\d{1,4}$/.test(typed);
      const isFault = !isCount && typed !== '';
      input.setAttribute('aria-invalid', String(isFault));
      why.textContent = isFault ? 'A whole number of fish, 9999 at most, or nothing where they were not counted.' : '';
      if (!isFault) save('weighed', said.nets, isCount ? { ...rest, [part]: Number(typed) } : rest, [field]);
    });
    input.setAttribute('aria-describedby', why.id);
    return input;
  };
  return [
    make(
      'fieldset',
      { className: 'fish' },
      make('legend', {}, 'Fish counted, if the club counts'),
      ...day.data.parts.map(({ id, name }) => make('label', { className: 'key' }, count(id), name)),
    ),
    why,
  ];
}

function movedForm(day: MatchDay, peg: DayPeg): HTMLElement {
  const moved = day.movedTo(peg.key);
  const taken = new Set(day.pegs.map(({ key }) => day.movedTo(key)));
  const to = make('select', {}, make('option', { value: '' }, 'a spare peg'));
  for (const spare of day.data.spare) {
    if (!taken.has(spare.key) || spare.key === moved)
      to.append(make('option', { value: spare.key, selected: spare.key === moved }, spare.name));
  }
  const why = keptInput(day, `${peg.key} why moved`, { maxLength: 200 });
  return make(
    'details',
    { open: moved !== null || peg.closed !== '' },
    make('summary', {}, 'This peg cannot be fished'),
    make('p', {}, 'Move its angler to an open peg that is not in the match; tell the bailiff what is wrong here.'),
    make('label', { className: 'field' }, 'Moved to', to),
    make('label', { className: 'field' }, 'Why', why),
    button('Note the move', () => {
      const value = to.value === '' ? null : { to: to.value, why: why.value };
      void day.note(ABOUT.moved(peg.key), value, [`${peg.key} why moved`]);
    }),
  );
}
