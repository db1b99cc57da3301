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
  const form = document.createElement('form');
  form.className = words.className;
  form.noValidate = true;
  const heading = document.createElement('h3');
  heading.textContent = words.heading;
  const input = document.createElement('input');
  input.name = words.className;
  input.autocomplete = 'off';
  input.placeholder = words.example;
  const fault = document.createElement('p');
  fault.className = 'own-depth-fault';
  fault.id = `${words.className}-fault`;
  fault.setAttribute('role', 'alert');
  input.setAttribute('aria-describedby', fault.id);
  const button = document.createElement('button');
  button.textContent = words.button;
  const fields = document.createElement('p');
  fields.className = 'own-depth-fields';
  for (const [label, control] of [...(words.before ?? []), [words.label, input] as const]) {
    const labelled = document.createElement('label');
    labelled.append(`${label} `, control);
    fields.append(labelled);
  }
  fields.append(button);
  const note = document.createElement('p');
  note.className = 'soft';
  note.textContent = words.note;
  form.append(heading, fields, fault, note);
  const refuse = (why: string) => {
    fault.textContent = why;
    input.setAttribute('aria-invalid', String(why !== ''));
    if (why !== '') input.focus();
  };
  return { form, input, refuse };
}
