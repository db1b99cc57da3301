import type { RoundHazard } from '../../atlas/round-places.ts';
import { hazardKind } from '../../domain/risk.ts';
import { newReference } from '../new-reference.ts';
import type { LookedAtDraft, PegDraft } from './draft.ts';
import { hazardId } from './draft-patch.ts';
import { fromTemplate, requireElement } from './elements.ts';
import type { FormContext } from './form-context.ts';
import type { PhotoList } from './photo-list.ts';

const TEXTS = ['control', 'by', 'why', 'severityNow', 'likelihoodNow'] as const;

/** Where nothing has been looked at yet. */
export function notLookedAt({ kind, place, foundOn, severity, likelihood }: RoundHazard): LookedAtDraft {
  return { kind, place, foundOn, severity, likelihood, did: '' };
}

/** Shows the guide's hazards with what was seen of each. Returns what shows a new state of them. */
export function knownHazards(
  form: HTMLFormElement,
  guide: readonly RoundHazard[],
  draft: PegDraft,
  context: Pick<FormContext, 'today'>,
  photos: PhotoList,
  onChange: (lookedAt: readonly LookedAtDraft[]) => void,
): (lookedAt: readonly LookedAtDraft[]) => void {
  const box = requireElement('[data-known]', form);
  box.hidden = draft.lookedAt.length === 0;
  let state = draft.lookedAt;
  const rows = state.map((hazard, index) => {
    const row = fromTemplate('known-hazard');
    const said = guide.find((one) => hazardId(one) === hazardId(hazard));
    requireElement('[data-name]', row).textContent = said?.name ?? hazardKind(hazard.kind).name;
    requireElement('[data-where]', row).textContent = hazard.place;
    requireElement('[data-looked]', row).textContent = said?.lookedAt ?? `found ${hazard.foundOn}`;
    requireElement('[data-rule]', row).hidden = !hazardKind(hazard.kind).hardRule;
    const change = (part: Partial<LookedAtDraft>): void => {
      state = state.map((one, at) => (at === index ? { ...one, ...part, day: context.today() } : one));
      onChange(state);
      showRow(row, state[index] ?? hazard);
    };
    row.dataset.problem = `known-${index}`;
    const name = `known-${newReference()}`;
    for (const radio of row.querySelectorAll<HTMLInputElement>('input[type=radio]')) {
      radio.name = name;
      radio.addEventListener('change', () => change({ did: radio.value as LookedAtDraft['did'] }));
    }
    for (const text of TEXTS) {
      for (const control of row.querySelectorAll<HTMLInputElement>(`[data-text="${text}"]`)) {
        control.addEventListener('input', () => change({ [text]: control.value }));
      }
    }
    requireElement<HTMLInputElement>('[data-cleared-photo]', row).addEventListener('change', async (event) => {
      const input = event.target as HTMLInputElement;
      const [file] = input.files ?? [];
      input.value = '';
      const id = file === undefined ? null : await photos.add(file, requireElement('[data-cleared-picture]', row));
      if (id !== null) change({ photo: id });
    });
    if (hazard.photo !== undefined) photos.showIn(hazard.photo, requireElement('[data-cleared-picture]', row));
    box.append(row);
    return row;
  });
  const show = (lookedAt: readonly LookedAtDraft[]): void => {
    state = lookedAt;
    for (const [index, hazard] of lookedAt.entries()) {
      const row = rows[index];
      if (row !== undefined) showRow(row, hazard);
    }
  };
  show(state);
  return show;
}

function showRow(row: HTMLElement, hazard: LookedAtDraft): void {
  for (const radio of row.querySelectorAll<HTMLInputElement>('input[type=radio]')) {
    radio.checked = radio.value === hazard.did;
  }
  for (const part of row.querySelectorAll<HTMLElement>('[data-when]')) {
    part.hidden = !(part.dataset.when ?? '').split(' ').includes(hazard.did);
  }
  for (const text of TEXTS) {
    for (const control of row.querySelectorAll<HTMLInputElement>(`[data-text="${text}"]`)) {
      if (control !== document.activeElement) control.value = hazard[text] ?? '';
    }
  }
}
