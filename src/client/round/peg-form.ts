import type { RoundPeg } from '../../atlas/bank-round-page.ts';
import type { Day } from '../../domain/day.ts';
import { hazardKind } from '../../domain/risk.ts';
import { type BegunForm, beginForm } from './begin-form.ts';
import type { PegDraft } from './draft.ts';
import { requireElement } from './elements.ts';
import { pegFindingOf } from './finding-of.ts';
import type { FormContext, OpenForm } from './form-context.ts';
import { keepFix } from './keep-fix.ts';
import { notLookedAt } from './known-hazards.ts';
import { fixWords } from './locate.ts';

export interface PegFormContext extends FormContext {
  readonly peg: RoundPeg;
}

/** A draft for a peg where nothing has been noted: what the guide says of it goes along, for the merge. */
export function emptyPegDraft(ref: string, water: string, { peg, record, known, hazards }: RoundPeg): PegDraft {
  return { ref, water, peg, record, known, fields: {}, lookedAt: hazards.map(notLookedAt), found: [], seen: false };
}

/** Makes the form of one peg, filled with what was noted so far. Every change is told at once. */
export function pegForm(context: PegFormContext): OpenForm {
  const { data, peg, today } = context;
  const begun = beginForm(context, {
    template: 'peg-form',
    hazards: peg.hazards,
    visited: 'Noted as visited. Nothing is noted as inspected.',
    problemsOf: (draft) => pegFindingOf(draft, data.lengthUnit).problems,
    show: (form, draft) => {
      requireElement('[data-reason]', form).hidden = draft.fields.status !== 'closed';
      requireElement('[data-closes]', form).hidden = !closes(draft);
    },
  });
  const { form, photos, noted, change } = begun;
  const sayAt = (sentence: string): void => {
    requireElement('[data-place-said]', form).textContent = sentence;
  };
  const showAt = (): void => {
    const { at } = noted();
    sayAt(at === undefined ? '' : fixWords(at));
  };
  fillKnown(form, noted());

  requireElement('[data-inspected]', form).addEventListener('click', () => {
    const said = noteInspected(begun, today());
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
      keep: (at) => change({ at, days: { ...noted().days, at: today() } }),
      onFix: context.onFix,
    }),
  );
  showAt();
  return {
    form,
    refresh: (changed) => {
      begun.refresh(changed);
      showAt();
    },
  };
}

/** Notes platform and known hazards as the guide has them; tells what was noted. */
function noteInspected({ noted, change, fill }: BegunForm, today: Day): readonly string[] {
  const draft = noted();
  const condition = draft.known['platform.condition'];
  const lookedAt = draft.lookedAt.map((hazard) =>
    hazard.did === '' ? { ...hazard, did: 'checked' as const, day: today } : hazard,
  );
  const platform = draft.fields.platform ?? condition;
  const days = { ...draft.days, ...(platform === undefined ? {} : { platform: today }) };
  change({ lookedAt, fields: { ...draft.fields, ...(platform === undefined ? {} : { platform }) }, days });
  fill();
  return [
    condition === undefined ? 'The guide says nothing of the platform: note it below' : `platform ${platform}`,
    lookedAt.length === 0 ? 'no hazards are listed' : `${lookedAt.length} listed hazards looked at`,
  ];
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
