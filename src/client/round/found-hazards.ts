import { HAZARD_KINDS } from '../../domain/hazard-kinds.ts';
import { newReference } from '../new-reference.ts';
import type { FoundDraft } from './draft.ts';
import { fromTemplate, requireElement } from './elements.ts';
import type { FormContext } from './form-context.ts';
import { keepFix } from './keep-fix.ts';
import { fixWords } from './locate.ts';
import type { PhotoList } from './photo-list.ts';

/** Lets hazards be added to a form, filled in and taken out again. Returns what shows a new state of them. */
export function foundHazards(
  form: HTMLFormElement,
  start: readonly FoundDraft[],
  photos: PhotoList,
  context: Pick<FormContext, 'today' | 'onFix'>,
  onChange: (found: readonly FoundDraft[]) => void,
): (found: readonly FoundDraft[]) => void {
  const box = requireElement('[data-found]', form);
  let found = start;
  const put = (typed: FoundDraft): void => {
    const hazard = { ...typed, day: typed.day ?? context.today() };
    found = found.some(({ id }) => id === hazard.id)
      ? found.map((one) => (one.id === hazard.id ? hazard : one))
      : [...found, hazard];
    onChange(found);
  };
  const remove = (id: string): void => {
    found = found.filter((one) => one.id !== id);
    onChange(found);
  };
  const build = (hazard: FoundDraft): HTMLElement => hazardFieldset(hazard, photos, context, put, remove);
  box.append(...start.map(build));
  requireElement('[data-add-hazard]', form).addEventListener('click', () => {
    const hazard = { id: newReference(), kind: '', place: '', action: '', severity: '', likelihood: '' };
    const fieldset = build(hazard);
    box.append(fieldset);
    put(hazard);
    requireElement<HTMLSelectElement>('[data-field="kind"]', fieldset).focus();
  });
  return (changed) => {
    // One that is being filled in here is not torn from under the finger.
    if (box.contains(document.activeElement)) return;
    found = changed;
    box.replaceChildren(...found.map(build));
  };
}

function hazardFieldset(
  start: FoundDraft,
  photos: PhotoList,
  context: Pick<FormContext, 'onFix'>,
  put: (hazard: FoundDraft) => void,
  remove: (id: string) => void,
): HTMLElement {
  const fieldset = fromTemplate('found-hazard');
  let hazard = start;
  const change = (part: Partial<FoundDraft>): void => {
    hazard = { ...hazard, ...part };
    put(hazard);
  };
  const say = (sentence: string): void => {
    requireElement('[data-hazard-said]', fieldset).textContent = sentence;
  };

  for (const control of fieldset.querySelectorAll<HTMLInputElement | HTMLSelectElement>('[data-field]')) {
    const field = control.dataset.field as 'kind' | 'place' | 'action';
    control.value = hazard[field];
    control.dataset.problem = `${hazard.id}-${field}`;
    control.addEventListener('input', () => {
      change({ [field]: control.value });
      if (field === 'kind') showAdvice(fieldset, control.value);
    });
  }
  showAdvice(fieldset, hazard.kind);
  for (const radio of fieldset.querySelectorAll<HTMLInputElement>('[data-level]')) {
    const level = radio.dataset.level as 'severity' | 'likelihood';
    radio.name = `${hazard.id}-${level}`;
    radio.checked = radio.value === hazard[level];
    radio.addEventListener('change', () => change({ [level]: radio.value }));
  }

  const place = requireElement<HTMLInputElement>('[data-hazard-place]', fieldset);
  place.checked = hazard.at !== undefined;
  place.addEventListener('change', async () => {
    const { at: _, ...without } = hazard;
    hazard = without;
    put(hazard);
    if (!place.checked) return say('');
    place.checked = await keepFix({
      say,
      anyway: requireElement('[data-anyway]', fieldset),
      keep: (at) => {
        place.checked = true;
        change({ at });
      },
      onFix: context.onFix,
    });
  });
  if (hazard.at !== undefined) say(fixWords(hazard.at));

  const picture = requireElement('[data-hazard-picture]', fieldset);
  if (hazard.photo !== undefined) photos.showIn(hazard.photo, picture);
  requireElement<HTMLInputElement>('[data-hazard-photo]', fieldset).addEventListener('change', async (event) => {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    input.value = '';
    if (file === undefined) return;
    const before = hazard.photo;
    const id = await photos.add(file, picture);
    if (id === null) return say('That file is no picture the phone can open.');
    if (before !== undefined) photos.remove(before);
    change({ photo: id });
  });

  requireElement('[data-remove-hazard]', fieldset).addEventListener('click', () => {
    if (hazard.photo !== undefined) photos.remove(hazard.photo);
    fieldset.remove();
    remove(hazard.id);
  });
  return fieldset;
}

/** What anglers are told of this kind unless the bailiff writes something better. */
function showAdvice(fieldset: HTMLElement, kind: string): void {
  const advice = HAZARD_KINDS.find(({ id }) => id === kind)?.advice;
  requireElement('[data-advice]', fieldset).textContent = advice === undefined ? '' : `left empty: ${advice}`;
}
