import type { DayPeg } from '../../atlas/match-day-page.ts';
import { matchResults, type ResultRow } from '../../match-day/match-results.ts';
import {
  ABOUT,
  doubtOf,
  gramsOfKilograms,
  gramsOfPounds,
  historyOf,
  type OnScales,
  onScales,
  totalGrams,
  weighedIn,
} from '../../match-day/scales.ts';
import { STATUS_WORDS, type WeighedStatus } from '../../match-day/weighed-in.ts';
import { clockTime } from '../round/elements.ts';
import type { MatchDay } from './day.ts';
import { button, make } from './make.ts';
import { weightWords } from './weights.ts';

/** What is open on the page and what was typed into it, kept while the lists are drawn anew. */
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
  const results = new Map(resultsSoFar(day).map((row) => [row.peg, row]));
  return make(
    'div',
    {},
    ...day.data.sections.map(({ name, pegs }) => {
      const done = pegs.filter(({ key }) => day.scalesOf(key) !== null).length;
      return make(
        'section',
        {},
        make('h3', {}, `Section ${name}`, make('small', {}, `${done} of ${pegs.length} weighed in`)),
        make('ol', { className: 'scale-pegs' }, ...pegs.map((peg) => pegRow(day, open, peg, results.get(peg.key)))),
      );
    }),
  );
}

function pegRow(day: MatchDay, open: OpenPeg, peg: DayPeg, result: ResultRow | undefined): HTMLElement {
  const moved = day.movedTo(peg.key);
  const heads = day.standing.get(ABOUT.scales(peg.key)) ?? [];
  const isOpen = open.key === peg.key;
  const name = moved === null ? peg.name : `${peg.name} → ${day.nameOf(moved)}`;
  const state = heads.length > 1 ? 'two phones differ' : stateWords(day, day.scalesOf(peg.key), result);
  const toggle = make(
    'button',
    { type: 'button', className: 'scale-peg', ariaExpanded: String(isOpen) },
    make('b', {}, name),
    make('span', {}, day.holderOf(peg.key)),
    make('span', { className: 'said' }, state),
  );
  toggle.dataset.peg = peg.key;
  toggle.addEventListener('click', () => {
    open.key = isOpen ? null : peg.key;
    void day.reload();
  });
  return make('li', {}, toggle, ...(isOpen ? [pegForm(day, peg)] : []));
}

function stateWords(day: MatchDay, said: OnScales | null, result: ResultRow | undefined): string {
  if (said === null) return '';
  const what =
    said.status === 'weighed' ? weightWords(totalGrams(said), day.data.weightUnit) : STATUS_WORDS[said.status].name;
  const place = result?.sectionPlace;
  return place == null || said.status !== 'weighed' ? what : `${what} · ${ordinal(place)}`;
}

/** 1st, 2nd, 3rd, 11th. */
function ordinal(place: number): string {
  const ten = place % 100 >= 11 && place % 100 <= 13;
  return `${place}${ten ? 'th' : (['th', 'st', 'nd', 'rd'][place % 10] ?? 'th')}`;
}

function pegForm(day: MatchDay, peg: DayPeg): HTMLElement {
  const about = ABOUT.scales(peg.key);
  const said = day.scalesOf(peg.key);
  const heads = day.standing.get(about) ?? [];
  const save = (status: WeighedStatus, nets: readonly number[], fish: Readonly<Record<string, number>>) =>
    void day.note(about, { status, nets, fish });
  return make(
    'div',
    { className: 'scale-form' },
    ...(peg.limits === '' ? [] : [make('p', {}, make('b', {}, `Fished within a limit: ${peg.limits}.`))]),
    ...(heads.length > 1
      ? [
          make('p', { className: 'notice' }, 'Two phones say different things of this peg. Which is right?'),
          ...heads.map((note) =>
            button(saidWords(day, onScales(note.value), note.at), () => void day.note(about, note.value), true),
          ),
        ]
      : [
          ...netList(said, day, save, () => void day.note(about, null)),
          netForm(day, peg, said, save),
          ...fishForm(day, said, save),
          make(
            'div',
            { className: 'scale-statuses' },
            ...(['blank', 'dnw', 'absent', 'disqualified'] as const).map((status) => {
              const made = button(STATUS_WORDS[status].name, () => save(status, [], {}), said?.status === status);
              made.append(make('small', {}, STATUS_WORDS[status].means));
              made.dataset.status = status;
              return made;
            }),
          ),
          ...(said === null ? [] : [button('Take it all back', () => void day.note(about, null))]),
          movedForm(day, peg),
        ]),
    historyView(day, about),
  );
}

type Save = (status: WeighedStatus, nets: readonly number[], fish: Readonly<Record<string, number>>) => void;

function netList(said: OnScales | null, day: MatchDay, save: Save, takeBack: () => void): HTMLElement[] {
  if (said?.status !== 'weighed') return [];
  return [
    make(
      'ol',
      { className: 'nets' },
      ...said.nets.map((net, i) => {
        const rest = said.nets.filter((_, k) => k !== i);
        const take = button('Take out', () => (rest.length === 0 ? takeBack() : save('weighed', rest, said.fish)));
        return make('li', {}, make('span', {}, weightWords(net, day.data.weightUnit)), take);
      }),
    ),
    make('p', {}, make('b', {}, `Together ${weightWords(totalGrams(said), day.data.weightUnit)}`)),
  ];
}

function netForm(day: MatchDay, peg: DayPeg, said: OnScales | null, save: Save): HTMLElement {
  const isPounds = day.data.weightUnit === 'lb';
  const fields = (isPounds ? ['lb', 'oz', 'dr'] : ['kg']).map((unit) => {
    const input = make('input', {
      inputMode: isPounds ? 'numeric' : 'decimal',
      autocomplete: 'off',
      ariaLabel: unit,
      name: unit,
    });
    return { input, label: make('label', { className: 'key' }, input, unit) };
  });
  const why = make('p', { className: 'why', role: 'alert' });
  const nets = said?.status === 'weighed' ? said.nets : [];
  let isSure = false;
  const form = make(
    'form',
    { className: 'net-form', noValidate: true },
    ...fields.map(({ label }) => label),
    make(
      'button',
      { type: 'submit', className: 'wide-button main' },
      nets.length === 0 ? 'Save this weight' : 'Add this net',
    ),
    why,
  );
  for (const { input } of fields) {
    input.addEventListener('input', () => {
      isSure = false;
    });
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const [first = '', ounces = '', drams = ''] = fields.map(({ input }) => input.value);
    const grams = isPounds ? gramsOfPounds(first, ounces, drams) : gramsOfKilograms(first);
    if (grams === null) {
      why.textContent = isPounds
        ? 'Whole pounds, ounces and drams from 0 to 15, 500 lb at most, and not nothing: a blank has its own key.'
        : 'Kilograms such as 5.56, at most 226, and not nothing: a blank has its own key.';
      return;
    }
    const others = resultsSoFar(day)
      .filter((row) => row.peg !== peg.key && row.grams > 0)
      .map((row) => row.grams);
    const doubt = isSure ? null : doubtOf(grams, nets, others);
    if (doubt !== null) {
      isSure = true;
      why.textContent =
        doubt === 'again'
          ? 'This net is down already. If it is another of the same weight, press once more.'
          : 'That is more than five times the heaviest bag so far. If it is right, press once more.';
      return;
    }
    save('weighed', [...nets, grams], said?.fish ?? {});
  });
  return form;
}

function fishForm(day: MatchDay, said: OnScales | null, save: Save): HTMLElement[] {
  if (said?.status !== 'weighed') return [];
  const why = make('p', { className: 'why', role: 'alert', id: 'fish-why' });
  const count = (part: string) => {
    const input = make('input', {
      inputMode: 'numeric',
      autocomplete: 'off',
      value: said.fish[part] === undefined ? '' : String(said.fish[part]),
    });
    input.addEventListener('change', () => {
      const { [part]: _, ...rest } = said.fish;
      const typed = input.value.trim();
      const isCount = /^\d{1,4}$/.test(typed);
      const isFault = !isCount && typed !== '';
      input.setAttribute('aria-invalid', String(isFault));
      why.textContent = isFault ? 'A whole number of fish, 9999 at most, or nothing where they were not counted.' : '';
      if (!isFault) save('weighed', said.nets, isCount ? { ...rest, [part]: Number(typed) } : rest);
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
  const why = make('input', { autocomplete: 'off', maxLength: 200 });
  return make(
    'details',
    { open: moved !== null },
    make('summary', {}, 'This peg cannot be fished'),
    make('p', {}, 'Move its angler to an open peg that is not in the match; tell the bailiff what is wrong here.'),
    make('label', { className: 'field' }, 'Moved to', to),
    make('label', { className: 'field' }, 'Why', why),
    button('Note the move', () => {
      void day.note(ABOUT.moved(peg.key), to.value === '' ? null : { to: to.value, why: why.value });
    }),
  );
}

function historyView(day: MatchDay, about: string): HTMLElement {
  const notes = historyOf(day.notes, about);
  if (notes.length < 2) return make('div');
  return make(
    'details',
    {},
    make('summary', {}, `${notes.length} changes`),
    make('ol', {}, ...notes.map((note) => make('li', {}, saidWords(day, onScales(note.value), note.at)))),
  );
}

function saidWords(day: MatchDay, said: OnScales | null, at: string): string {
  const when = clockTime(new Date(at));
  if (said === null) return `${when}: taken back`;
  return `${when}: ${stateWords(day, said, undefined)}`;
}
