import type { RoundPlace } from '../../atlas/round-places.ts';
import { type PegDraft, PLACE_MARK } from './draft.ts';
import { fromTemplate, requireElement } from './elements.ts';
import { placeFindingOf } from './finding-of.ts';
import type { FormContext, OpenForm } from './form-context.ts';
import { fillFields, isField, letGoOnSecondTap, readFields, showProblems } from './form-fields.ts';
import { foundHazards } from './found-hazards.ts';
import { knownHazards, notLookedAt } from './known-hazards.ts';
import { photoList } from './photo-list.ts';

export interface PlaceFormContext extends FormContext {
  readonly place: RoundPlace;
}

/** A draft for a place where nothing has been noted. */
export function emptyPlaceDraft(ref: string, water: string, { id, hazards }: RoundPlace): PegDraft {
  const lookedAt = hazards.map(notLookedAt);
  return { ref, water, peg: `${PLACE_MARK}${id}`, record: '', known: {}, fields: {}, lookedAt, found: [], seen: false };
}

/** Makes the form of a path, a gate, a car park, a piece of rescue kit, or of the whole water. */
export function placeForm(context: PlaceFormContext): OpenForm {
  const { place, onChange, today } = context;
  const form = fromTemplate<HTMLFormElement>('place-form');
  let draft = context.draft;
  const show = (): void => {
    showProblems(form, placeFindingOf(draft).problems);
    requireElement('[data-closing]', form).hidden = draft.fields.closing === undefined;
    requireElement('[data-kit-gone]', form).hidden = draft.fields.kit !== 'missing' && draft.fields.kit !== 'damaged';
  };
  const change = (part: Partial<PegDraft>): void => {
    draft = { ...draft, ...part, seen: true, seenOn: draft.seenOn ?? today() };
    onChange(draft);
    show();
  };
  requireElement('[data-kit]', form).hidden = !place.isKit;
  requireElement('[data-water]', form).hidden = place.id !== '';
  fillFields(form, draft);
  letGoOnSecondTap(form);
  form.addEventListener('input', (event) => {
    if (isField((event.target as HTMLInputElement).name)) change(readFields(form, draft, today()));
  });
  form.addEventListener('submit', (event) => event.preventDefault());
  const photos = photoList(requireElement('[data-photos]', form), context);
  const showHazards = knownHazards(form, place.hazards, draft, context, photos, (lookedAt) => change({ lookedAt }));
  const showFound = foundHazards(form, draft.found, photos, context, (found) => change({ found }));
  requireElement('[data-visited]', form).addEventListener('click', () => {
    change({});
    requireElement('[data-noted]', form).textContent = 'Noted as visited.';
  });
  requireElement('[data-next]', form).addEventListener('click', () => context.onNext());
  requireElement('[data-take-back]', form).addEventListener('click', () => context.onTakeBack());
  show();
  return {
    form,
    refresh: (changed) => {
      draft = changed;
      fillFields(form, draft);
      showHazards(draft.lookedAt);
      showFound(draft.found);
      show();
    },
  };
}
