import type { DayPeg } from '../../atlas/match-day-page.ts';
import { doubtOf, gramsOfKilograms, gramsOfPounds, type Net, type OnScales } from '../../match-day/scales.ts';
import { make } from '../make.ts';
import { keptInput } from './kept-input.ts';
import type { MatchDay } from './match-day.ts';

/** The fields of a net's weight, and of what is in it, as they are kept while nothing is noted. */
export const netFields = (day: MatchDay, key: string): readonly string[] => [
  ...unitsOf(day).map((unit) => `${key} ${unit}`),
  `${key} part`,
];

/** What is typed for a peg and not saved: "12 lb 4 oz"; empty where there is nothing. */
export function unsavedWords(day: MatchDay, key: string): string {
  return unitsOf(day)
    .flatMap((unit) => {
      const typed = day.typedIn(`${key} ${unit}`)?.trim() ?? '';
      return typed === '' ? [] : [`${typed} ${unit}`];
    })
    .join(' ');
}

const DOUBTS = {
  again: 'This net is down already. If it is another of the same weight, press once more.',
  heavy: 'That is more than five times the heaviest bag so far. If it is right, press once more.',
  record: 'That is more than any bag in the log of this water. If it is right, press once more.',
} as const;

/**
 * Large keys for one more net of a peg.
 * @param others what other pegs weighed so far, in grams
 */
export function netForm(
  day: MatchDay,
  peg: DayPeg,
  said: OnScales | null,
  others: readonly number[],
  save: (nets: readonly Net[], fields: readonly string[]) => void,
): HTMLElement {
  const isPounds = day.data.weightUnit === 'lb';
  const inputs = unitsOf(day).map((unit) =>
    keptInput(day, `${peg.key} ${unit}`, { inputMode: isPounds ? 'numeric' : 'decimal', ariaLabel: unit, name: unit }),
  );
  const why = make('p', { className: 'why', role: 'alert' });
  const unsaved = make('p', { className: 'unsaved' });
  const part = partChoice(day, peg);
  const nets = said?.status === 'weighed' ? said.nets : [];
  const submit = make(
    'button',
    { type: 'submit', className: 'wide-button main' },
    nets.length === 0 ? 'Save this weight' : 'Add this net',
  );
  submit.dataset.field = `${peg.key} save`;
  const form = make(
    'form',
    { className: 'net-form', noValidate: true },
    make(
      'div',
      { className: 'keys' },
      ...inputs.map((input) => make('label', { className: 'key' }, input, input.name)),
    ),
    ...part.shown,
    submit,
    unsaved,
    why,
  );
  let isSure = false;
  const sayUnsaved = () => {
    const words = unsavedWords(day, peg.key);
    unsaved.textContent = words === '' ? '' : `${words} typed, kept, not saved yet.`;
  };
  sayUnsaved();
  form.addEventListener('input', () => {
    isSure = false;
    // Said once it is on the disk.
    void day.settled().then(sayUnsaved);
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const [first = '', ounces = '', drams = ''] = inputs.map(({ value }) => value);
    const grams = isPounds ? gramsOfPounds(first, ounces, drams) : gramsOfKilograms(first);
    if (grams === null) {
      why.textContent = isPounds
        ? 'Whole pounds, ounces and drams from 0 to 15, 500 lb at most, and not nothing: a blank has its own key.'
        : 'Kilograms such as 5.56, at most 226, and not nothing: a blank has its own key.';
      return;
    }
    if (part.isMissing()) {
      why.textContent = 'Say what is in this net: the other nets of this match were weighed apart.';
      return;
    }
    const doubt = isSure ? null : doubtOf(grams, nets, others, day.data.heaviestGrams);
    if (doubt !== null) {
      isSure = true;
      why.textContent = DOUBTS[doubt];
      return;
    }
    save([...nets, { grams, part: part.chosen() }], netFields(day, peg.key));
  });
  return form;
}

const MIXED = 'mixed';

/**
 * What is in a net. Nothing needs to be said in a club that weighs all together; once one net was weighed apart it has to be said of
 * every net, since a part is known only where all of it is.
 */
function partChoice(day: MatchDay, { key }: DayPeg) {
  const { parts } = day.data;
  const weighsApart = day.pegs.some((peg) => day.scalesOf(peg.key)?.nets.some(({ part }) => part !== null));
  const field = `${key} part`;
  const typed = day.typedIn(field) ?? '';
  const choices = [{ id: MIXED, name: 'All together' }, ...parts].map(({ id, name }) => {
    const input = make('input', { type: 'radio', name: 'net-part', value: id, className: 'net-radio' });
    input.checked = typed === '' ? !weighsApart && id === MIXED : typed === id;
    input.dataset.field = `${field} ${id}`;
    input.addEventListener('change', () => void day.type(field, id));
    return { input, label: make('label', {}, input, name) };
  });
  const checked = () => choices.find(({ input }) => input.checked)?.input.value;
  return {
    shown:
      parts.length < 2
        ? []
        : [
            make(
              'fieldset',
              { className: 'net-part' },
              make('legend', {}, 'What is in this net?'),
              ...choices.map(({ label }) => label),
            ),
          ],
    isMissing: () => parts.length >= 2 && checked() === undefined,
    chosen: () => {
      const id = checked();
      return id === undefined || id === MIXED ? null : id;
    },
  };
}

function unitsOf(day: MatchDay): readonly string[] {
  return day.data.weightUnit === 'lb' ? ['lb', 'oz', 'dr'] : ['kg'];
}
