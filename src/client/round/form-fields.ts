import type { Day } from '../../domain/day.ts';
import { newReference } from '../new-reference.ts';
import { PEG_FIELDS, type PegDraft, type PegField } from './draft.ts';
import { requireElement } from './elements.ts';

type Fields = Pick<PegDraft, 'fields' | 'days'>;

/** Puts what was typed into the controls of a form; the one that is being typed into is left alone. */
export function fillFields(form: HTMLFormElement, { fields }: Fields): void {
  for (const name of PEG_FIELDS) {
    const text = fields[name] ?? '';
    for (const control of form.querySelectorAll<HTMLInputElement>(`[name="${name}"]`)) {
      if (control.type === 'radio' || control.type === 'checkbox') control.checked = control.value === text;
      else if (control !== document.activeElement) control.value = text;
    }
  }
}

/** The fields of a form as typed, those that changed with the day of today. */
export function readFields(form: HTMLFormElement, before: Fields, today: Day): Required<Fields> {
  const entries = new FormData(form);
  const typed = PEG_FIELDS.map((name) => [name, String(entries.get(name) ?? '')] as const);
  const fields: Partial<Record<PegField, string>> = Object.fromEntries(typed.filter(([, text]) => text !== ''));
  const days: Partial<Record<PegField | 'at', Day>> = { ...before.days };
  for (const name of PEG_FIELDS) {
    if (fields[name] === undefined) delete days[name];
    else if (fields[name] !== before.fields[name]) days[name] = today;
  }
  return { fields, days };
}

/** Whether the name of a control is a field of the form. */
export function isField(name: string): name is PegField {
  return (PEG_FIELDS as readonly string[]).includes(name);
}

/** A button touched by mistake can be let go: a tap on the chosen one takes the choice back. */
export function letGoOnSecondTap(form: HTMLFormElement): void {
  for (const radio of form.querySelectorAll<HTMLInputElement>('[type="radio"][name]')) {
    let wasChecked = false;
    radio.closest('label')?.addEventListener('pointerdown', () => {
      wasChecked = radio.checked;
    });
    radio.addEventListener('click', () => {
      if (!wasChecked) return;
      wasChecked = false;
      radio.checked = false;
      radio.dispatchEvent(new Event('input', { bubbles: true }));
    });
  }
}

/**
 * Shows the sentences on what cannot be handed over as it stands, each tied to the controls it is about: by their name, or by
 * the `data-problem` of what has none of its own.
 */
export function showProblems(
  form: HTMLFormElement,
  problems: readonly { readonly field: string; readonly sentence: string }[],
): void {
  const list = requireElement('[data-problems]', form);
  list.id ||= `problems-${newReference()}`;
  const lines = problems.map(({ sentence }, index) => {
    const line = document.createElement('p');
    line.id = `${list.id}-${index}`;
    line.textContent = sentence;
    return line;
  });
  list.replaceChildren(...lines);
  for (const control of form.querySelectorAll<HTMLInputElement>('input, select, textarea')) {
    const about = problems.flatMap(({ field }, index) => (isAbout(control, field) ? lines[index]!.id : []));
    if (about.length === 0) control.removeAttribute('aria-describedby');
    else control.setAttribute('aria-describedby', about.join(' '));
    // One button of a choice is not wrong: what is missing is the choice.
    if (control.type !== 'radio' && control.type !== 'file') setInvalid(control, about.length > 0);
  }
}

/** Says of a control whether what stands in it is wrong. */
export function setInvalid(control: HTMLElement, isWrong: boolean): void {
  if (isWrong) control.setAttribute('aria-invalid', 'true');
  else control.removeAttribute('aria-invalid');
}

function isAbout(control: HTMLInputElement, field: string): boolean {
  return control.name === field || control.closest<HTMLElement>('[data-problem]')?.dataset.problem === field;
}
