import { readTypedPeg } from '../../domain/typed-peg.ts';
import { pulledFault } from '../../match-day/bag-draw.ts';
import type { Entry } from '../../match-day/entries.ts';
import { ABOUT, historyOf } from '../../match-day/scales.ts';
import { button, make } from '../make.ts';
import { newReference } from '../new-reference.ts';
import { keptInput } from './kept-input.ts';
import type { MatchDay } from './match-day.ts';

/** The list of pegs not taken, which every field suggests from. */
export const FREE_PEGS = 'free-pegs';

/** Where who has come is entered. */
export function addForm(day: MatchDay): HTMLElement {
  const name = keptInput(day, 'entry', { maxLength: 120, name: 'entry' });
  const form = make(
    'form',
    { className: 'add-entry' },
    make('label', { className: 'field' }, 'Who has come? The name stays on this phone.', name),
    make('button', { type: 'submit', className: 'wide-button main' }, 'Enter'),
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const typed = name.value.trim();
    if (typed === '') return;
    // By chance, not by count: the page may be open twice.
    void day.note(ABOUT.entry(`${day.phone}-${newReference()}`), { name: typed }, ['entry']);
    name.focus();
  });
  return form;
}

/** Somebody who entered, and the peg they pulled from the bag, as typed. */
export function entryRow(day: MatchDay, entry: Entry, held: ReadonlyMap<string, string>): HTMLElement {
  const field = `${entry.id} pulled`;
  const input = keptInput(day, field, {
    value: entry.peg === null ? '' : day.nameOf(entry.peg),
    className: 'pulled',
    placeholder: 'peg?',
    ariaLabel: `Peg of ${entry.name || 'this entry'}`,
  });
  input.setAttribute('list', FREE_PEGS);
  const why = make('small', { role: 'alert' });
  const typed = day.typedIn(field);
  if (typed !== undefined) why.textContent = pulled(day, entry, held, typed).said;
  else why.textContent = standsWords(day, entry);
  input.addEventListener('change', () => {
    const { peg, said } = pulled(day, entry, held, input.value);
    if (said === '') void day.note(ABOUT.holds(entry.id), peg, [field]);
    else why.textContent = said;
  });
  return make(
    'li',
    {},
    make('span', { className: 'entry-name' }, entry.name === '' ? 'entered on another phone' : entry.name),
    input,
    button('Withdraws', () => {
      void day.noteAll(
        [
          [ABOUT.holds(entry.id), null],
          [ABOUT.entry(entry.id), null],
        ],
        [field],
      );
    }),
    why,
  );
}

/** What is to be said of an entry whose peg was settled on more than one phone, or was kept out of the bag. */
function standsWords(day: MatchDay, entry: Entry): string {
  const { peg, differs } = entry;
  if (differs.length > 0) {
    return `Two phones differ: peg ${differs.map((key) => day.nameOf(key)).join(' or ')}. Type the right one.`;
  }
  if (peg === null) return '';
  const also = day.alsoOn(entry);
  if (also.length > 0) {
    return `${also.map(({ name }) => name || 'somebody entered on another phone').join(', ')} has this peg too: one of them must have another.`;
  }
  return day.pegs.find(({ key }) => key === peg)?.isKept === true ? 'Kept for who needs it free of steps.' : '';
}

/** The peg that was pulled, as typed; or what is wrong with it, in words. */
function pulled(
  day: MatchDay,
  entry: Entry,
  held: ReadonlyMap<string, string>,
  typed: string,
): { readonly peg: string | null; readonly said: string } {
  if (typed.trim() === '') return { peg: null, said: '' };
  const exact = day.pegs.filter(({ name }) => name === typed.trim());
  const read = exact.length === 1 ? { pegs: exact, faults: [] } : readTypedPeg(typed, day.pegs);
  if (read === null || read.faults.length > 0 || read.pegs.length === 0) {
    return { peg: null, said: `There is no peg “${typed.trim()}” in this match.` };
  }
  const [peg, ...more] = read.pegs;
  if (more.length > 0) {
    return { peg: null, said: `Which: ${read.pegs.map(({ name }) => name).join(' or ')}?` };
  }
  if (peg!.closed !== '') return { peg: null, said: `Peg ${peg!.name} may not be fished: closed ${peg!.closed}.` };
  const fault = pulledFault(
    day.pegs.map(({ key }) => key),
    held,
    entry.id,
    peg!.key,
  );
  if (fault?.fault !== 'pulled-before') return { peg: peg!.key, said: '' };
  const by = day.entries.find(({ id }) => id === fault.by)?.name;
  return { peg: null, said: `Peg ${peg!.name} is held by ${by || 'somebody entered on another phone'} already.` };
}

/** Who withdrew, each with a way back: a wrong tap costs no name. */
export function withdrawnView(day: MatchDay): HTMLElement[] {
  const gone = [...day.standing].flatMap(([about, [note]]) => {
    if (!about.startsWith('entry ') || note === undefined || note.value !== null) return [];
    const before = historyOf(day.notes, about).findLast(({ value }) => value !== null)?.value as
      | { name?: string }
      | undefined;
    return [{ about, name: before?.name ?? '' }];
  });
  if (gone.length === 0) return [];
  return [
    make(
      'details',
      {},
      make('summary', {}, `${gone.length} withdrew`),
      make(
        'ul',
        { className: 'entries' },
        ...gone.map(({ about, name }) =>
          make(
            'li',
            {},
            make('span', { className: 'entry-name' }, name || 'entered on another phone'),
            button('Is here after all', () => void day.note(about, { name })),
          ),
        ),
      ),
    ),
  ];
}
