import { HAZARD_KINDS } from '../../domain/hazard-kinds.ts';
import { type FoundDraft, newRef } from './draft.ts';
import { fromTemplate, the } from './elements.ts';
import { locate } from './locate.ts';
import type { PhotoList } from './photo-list.ts';

/** Lets hazards be added to a peg's form, filled in and taken out again. */
export function foundHazards(
  form: HTMLFormElement,
  start: readonly FoundDraft[],
  photos: PhotoList,
  onChange: (found: readonly FoundDraft[]) => void,
): void {
  const box = the('[data-found]', form);
  let found = start;
  const put = (hazard: FoundDraft): void => {
    found = found.some(({ id }) => id === hazard.id)
      ? found.map((one) => (one.id === hazard.id ? hazard : one))
      : [...found, hazard];
    onChange(found);
  };
  const remove = (id: string): void => {
    found = found.filter((one) => one.id !== id);
    onChange(found);
  };
  for (const hazard of start) box.append(hazardFieldset(hazard, photos, put, remove));
  the('[data-add-hazard]', form).addEventListener('click', () => {
    const hazard = { id: newRef(), kind: '', place: '', action: '', severity: '', likelihood: '' };
    const fieldset = hazardFieldset(hazard, photos, put, remove);
    box.append(fieldset);
    put(hazard);
    the<HTMLSelectElement>('[data-field="kind"]', fieldset).focus();
  });
}

function hazardFieldset(
  start: FoundDraft,
  photos: PhotoList,
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
    the('[data-hazard-said]', fieldset).textContent = sentence;
  };

  for (const control of fieldset.querySelectorAll<HTMLInputElement | HTMLSelectElement>('[data-field]')) {
    const field = control.dataset.field as 'kind' | 'place' | 'action';
    control.value = hazard[field];
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

  const place = the<HTMLInputElement>('[data-hazard-place]', fieldset);
  place.checked = hazard.at !== undefined;
  place.addEventListener('change', async () => {
    const { at: _, ...without } = hazard;
    hazard = without;
    put(hazard);
    if (!place.checked) return say('');
    say('Looking for the position…');
    const located = await locate();
    if (typeof located === 'string') {
      place.checked = false;
      return say(located);
    }
    change({ at: located.at });
    say(`Position kept, good to some ${Math.max(1, Math.round(located.accuracyMetres))} m.`);
  });

  const picture = the('[data-hazard-picture]', fieldset);
  if (hazard.photo !== undefined) photos.showIn(hazard.photo, picture);
  the<HTMLInputElement>('[data-hazard-photo]', fieldset).addEventListener('change', async (event) => {
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

  the('[data-remove-hazard]', fieldset).addEventListener('click', () => {
    if (hazard.photo !== undefined) photos.remove(hazard.photo);
    fieldset.remove();
    remove(hazard.id);
  });
  return fieldset;
}

/** What anglers are told of this kind unless the bailiff writes something better. */
function showAdvice(fieldset: HTMLElement, kind: string): void {
  const advice = HAZARD_KINDS.find(({ id }) => id === kind)?.advice;
  the('[data-advice]', fieldset).textContent = advice === undefined ? '' : `left empty: ${advice}`;
}
