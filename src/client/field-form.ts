import { labelled, make } from './make.ts';

/** What a small form of one field asks for, in words. */
export interface FieldWords {
  readonly className: string;
  readonly heading: string;
  /** Choices that stand before the field, with their labels. */
  readonly before?: readonly (readonly [string, HTMLElement])[];
  readonly label: string;
  readonly example: string;
  readonly button: string;
  readonly note: string;
}

/** A form made by a script, since without it there is nothing to send; `refuse` says beside the field what is wrong with it. */
export interface FieldForm {
  readonly form: HTMLFormElement;
  readonly input: HTMLInputElement;
  readonly refuse: (words: string) => void;
}

/** Makes a form of one field whose fault is tied to it for a screen reader. */
export function fieldForm(words: FieldWords): FieldForm {
  const fault = make('p', { className: 'own-depth-fault', id: `${words.className}-fault` });
  fault.setAttribute('role', 'alert');
  const input = make('input', { name: words.className, autocomplete: 'off', placeholder: words.example });
  input.setAttribute('aria-describedby', fault.id);
  const controls = [...(words.before ?? []), [words.label, input] as const];
  const form = make(
    'form',
    { className: words.className, noValidate: true },
    make('h3', {}, words.heading),
    make(
      'p',
      { className: 'own-depth-fields' },
      ...controls.map(([label, control]) => labelled(label, control)),
      make('button', {}, words.button),
    ),
    fault,
    make('p', { className: 'soft' }, words.note),
  );
  const refuse = (why: string) => {
    fault.textContent = why;
    input.setAttribute('aria-invalid', String(why !== ''));
    if (why !== '') input.focus();
  };
  return { form, input, refuse };
}
