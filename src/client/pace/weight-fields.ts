import { toPoundsOunces } from '../../domain/weight.ts';
import { gramsOfKilograms, gramsOfPounds } from '../../match-day/scales.ts';
import { make } from '../make.ts';
import { say } from '../page-words.ts';

/** Fields for one weight in the venue's unit. */
export interface WeightFields {
  readonly inputs: readonly HTMLInputElement[];
  readonly labels: readonly HTMLElement[];
}

/** Large fields for pounds and ounces, or kilograms. */
export function weightFields(unit: 'lb' | 'kg', grams: number | null): WeightFields {
  const { pounds, ounces } = toPoundsOunces(grams ?? 0);
  const values =
    grams === null ? ['', ''] : unit === 'lb' ? [String(pounds), String(ounces)] : [(grams / 1000).toFixed(2)];
  const inputs = (unit === 'lb' ? ['lb', 'oz'] : ['kg']).map((name, i) =>
    make('input', {
      inputMode: unit === 'lb' ? 'numeric' : 'decimal',
      autocomplete: 'off',
      name,
      ariaLabel: name,
      value: values[i] ?? '',
      maxLength: 8,
    }),
  );
  return { inputs, labels: inputs.map((input) => make('label', { className: 'key' }, input, input.name)) };
}

/** The grams typed; null with the reason beside the fields, tied to them, where they are no weight. */
export function readWeight({ inputs }: WeightFields, unit: 'lb' | 'kg', why: HTMLElement): number | null {
  const [first = '', ounces = ''] = inputs.map(({ value }) => value);
  const grams = unit === 'lb' ? gramsOfPounds(first, ounces, '') : gramsOfKilograms(first);
  why.textContent = grams !== null ? '' : say(unit === 'lb' ? 'pace.poundsFault' : 'pace.kilogramsFault');
  for (const input of inputs) {
    input.setAttribute('aria-invalid', String(grams === null));
    input.setAttribute('aria-describedby', why.id);
  }
  if (grams === null) inputs[0]!.focus();
  return grams;
}
