import type { RoundHazard } from '../../atlas/round-places.ts';
import type { PegDraft } from './draft.ts';
import { fromTemplate, requireElement } from './elements.ts';
import type { Problem } from './finding-of.ts';
import type { FormContext, OpenForm } from './form-context.ts';
import { fillFields, isField, letGoOnSecondTap, readFields, showProblems } from './form-fields.ts';
import { foundHazards } from './found-hazards.ts';
import { knownHazards } from './known-hazards.ts';
import { type PhotoList, photoList } from './photo-list.ts';

/** In what the form of a peg and that of a place differ. */
interface FormKind {
  /** Id of its template. */
  readonly template: string;
  /** Those that the guide knows there. */
  readonly hazards: readonly RoundHazard[];
  /** Said when somebody was there and saw nothing new. */
  readonly visited: string;
  readonly problemsOf: (draft: PegDraft) => readonly Problem[];
  /** Shows and hides what hangs on the draft: at the beginning and after every change. */
  readonly show: (form: HTMLFormElement, draft: PegDraft) => void;
}

/** A form that has begun, for what only one kind of it does. */
export interface BegunForm extends OpenForm {
  readonly photos: PhotoList;
  /** The draft as it stands. */
  readonly noted: () => PegDraft;
  readonly change: (part: Partial<PegDraft>) => void;
  /** Puts the draft into the fields and the known hazards, where something else than typing changed it. */
  readonly fill: () => void;
}

/** Makes a form of the round, filled with what was noted so far. Every change is told at once. */
export function beginForm(context: FormContext, kind: FormKind): BegunForm {
  const { onChange, today } = context;
  const form = fromTemplate<HTMLFormElement>(kind.template);
  let draft = context.draft;
  const show = (): void => {
    showProblems(form, kind.problemsOf(draft));
    kind.show(form, draft);
  };
  const change = (part: Partial<PegDraft>): void => {
    draft = { ...draft, ...part, seen: true, seenOn: draft.seenOn ?? today() };
    onChange(draft);
    show();
  };
  fillFields(form, draft);
  letGoOnSecondTap(form);
  form.addEventListener('input', (event) => {
    if (isField((event.target as HTMLInputElement).name)) change(readFields(form, draft, today()));
  });
  form.addEventListener('submit', (event) => event.preventDefault());

  const photos = photoList(requireElement('[data-photos]', form), context);
  const showHazards = knownHazards(form, kind.hazards, draft, context, photos, (lookedAt) => change({ lookedAt }));
  const showFound = foundHazards(form, draft.found, photos, context, (found) => change({ found }));
  const fill = (): void => {
    fillFields(form, draft);
    showHazards(draft.lookedAt);
  };
  requireElement('[data-visited]', form).addEventListener('click', () => {
    change({});
    requireElement('[data-noted]', form).textContent = kind.visited;
  });
  requireElement('[data-next]', form).addEventListener('click', () => context.onNext());
  requireElement('[data-take-back]', form).addEventListener('click', () => context.onTakeBack());
  show();
  return {
    form,
    photos,
    noted: () => draft,
    change,
    fill,
    refresh: (changed) => {
      draft = changed;
      fill();
      showFound(draft.found);
      show();
    },
  };
}
