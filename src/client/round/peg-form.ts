import type { RoundPeg } from '../../atlas/bank-round-page.ts';
import { hazardKind } from '../../domain/risk.ts';
import type { PegDraft } from './draft.ts';
import { fromTemplate, requireElement } from './elements.ts';
import { pegFindingOf } from './finding-of.ts';
import type { FormContext, OpenForm } from './form-context.ts';
import { fillFields, isField, letGoOnSecondTap, readFields, showProblems } from './form-fields.ts';
import { foundHazards } from './found-hazards.ts';
import { keepFix } from './keep-fix.ts';
import { knownHazards, notLookedAt } from './known-hazards.ts';
import { fixWords } from './locate.ts';
import { photoList } from './photo-list.ts';

export interface PegFormContext extends FormContext {
  readonly peg: RoundPeg;
}

/** A draft for a peg where nothing has been noted: what the guide says of it goes along, for the merge. */
export function emptyPegDraft(ref: string, water: string, { peg, record, known, hazards }: RoundPeg): PegDraft {
  return { ref, water, peg, record, known, fields: {}, lookedAt: hazards.map(notLookedAt), found: [], seen: false };
}

/** Makes the form of one peg, filled with what was noted so far. Every change is told at once. */
export function pegForm(context: PegFormContext): OpenForm {
  const { data, peg, onChange, today } = context;
  const form = fromTemplate<HTMLFormElement>('peg-form');
  let draft = context.draft;
  const show = (): void => {
    showProblems(form, pegFindingOf(draft, data.lengthUnit).problems);
    requireElement('[data-reason]', form).hidden = draft.fields.status !== 'closed';
    requireElement('[data-closes]', form).hidden = !closes(draft);
  };
  const change = (part: Partial<PegDraft>): void => {
    draft = { ...draft, ...part, seen: true, seenOn: draft.seenOn ?? today() };
    onChange(draft);
    show();
  };
  const sayAt = (sentence: string): void => {
    requireElement('[data-place-said]', form).textContent = sentence;
  };

  fillFields(form, draft);
  fillKnown(form, draft);
  letGoOnSecondTap(form);
  form.addEventListener('input', (event) => {
    if (isField((event.target as HTMLInputElement).name)) change(readFields(form, draft, today()));
  });
  form.addEventListener('submit', (event) => event.preventDefault());

  const photos = photoList(requireElement('[data-photos]', form), context);
  const showHazards = knownHazards(form, peg.hazards, draft, context, photos, (lookedAt) => change({ lookedAt }));
  const showFound = foundHazards(form, draft.found, photos, context, (found) => change({ found }));

  requireElement('[data-visited]', form).addEventListener('click', () => {
    change({});
    requireElement('[data-noted]', form).textContent = 'Noted as visited. Nothing is noted as inspected.';
  });
  const condition = draft.known['platform.condition'];
  requireElement('[data-inspected]', form).addEventListener('click', () => {
    const lookedAt = draft.lookedAt.map((hazard) =>
      hazard.did === '' ? { ...hazard, did: 'checked' as const, day: today() } : hazard,
    );
    const platform = draft.fields.platform ?? condition;
    const days = { ...draft.days, ...(platform === undefined ? {} : { platform: today() }) };
    change({ lookedAt, fields: { ...draft.fields, ...(platform === undefined ? {} : { platform }) }, days });
    fillFields(form, draft);
    showHazards(draft.lookedAt);
    const said = [
      condition === undefined ? 'The guide says nothing of the platform: note it below' : `platform ${platform}`,
      draft.lookedAt.length === 0 ? 'no hazards are listed' : `${draft.lookedAt.length} listed hazards looked at`,
    ];
    requireElement('[data-noted]', form).textContent = `Noted: ${said.join('; ')}.`;
  });

  requireElement<HTMLInputElement>('[data-add-photo]', form).addEventListener('change', async (event) => {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    input.value = '';
    if (file === undefined) return;
    const id = await photos.add(file);
    if (id === null) sayAt('That file is no picture the phone can open.');
    else change({});
  });
  requireElement('[data-place]', form).addEventListener('click', () =>
    keepFix({
      say: sayAt,
      anyway: requireElement('[data-place-anyway]', form),
      keep: (at) => change({ at, days: { ...draft.days, at: today() } }),
      onFix: context.onFix,
    }),
  );
  if (draft.at !== undefined) sayAt(fixWords(draft.at));
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
      sayAt(draft.at === undefined ? '' : fixWords(draft.at));
      show();
    },
  };
}

/** Whether what is noted closes the peg when the round is taken in. */
function closes({ fields, found, lookedAt }: PegDraft): boolean {
  const isRule = ({ kind }: { readonly kind: string }) => kind !== '' && hazardKind(kind).hardRule;
  return (
    fields.status === 'closed' ||
    fields.platform === 'unsafe' ||
    found.some(isRule) ||
    lookedAt.some((hazard) => hazard.did === 'worsened' && isRule(hazard))
  );
}

function fillKnown(form: HTMLFormElement, { known }: PegDraft): void {
  for (const element of form.querySelectorAll<HTMLElement>('[data-was]')) {
    const was = known[element.dataset.was as keyof typeof known];
    element.textContent = was === undefined ? 'the guide says nothing' : `the guide says ${was}`;
  }
  const status = form.querySelector<HTMLInputElement>(`[name="status"][value="${known.status ?? ''}"] + span`);
  if (status !== null) status.textContent += ', as in the guide';
}
