import type { RoundPlace } from '../../atlas/round-places.ts';
import { beginForm } from './begin-form.ts';
import { type PegDraft, PLACE_MARK } from './draft.ts';
import { requireElement } from './elements.ts';
import { placeFindingOf } from './finding-of.ts';
import type { FormContext, OpenForm } from './form-context.ts';
import { notLookedAt } from './known-hazards.ts';

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
  const { place } = context;
  const begun = beginForm(context, {
    template: 'place-form',
    hazards: place.hazards,
    visited: 'Noted as visited.',
    problemsOf: (draft) => placeFindingOf(draft).problems,
    show: (form, { fields }) => {
      requireElement('[data-closing]', form).hidden = fields.closing === undefined;
      requireElement('[data-kit-gone]', form).hidden = fields.kit !== 'missing' && fields.kit !== 'damaged';
    },
  });
  requireElement('[data-kit]', begun.form).hidden = !place.isKit;
  requireElement('[data-water]', begun.form).hidden = place.id !== '';
  return begun;
}
