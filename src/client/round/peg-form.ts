import type { BankRoundData, RoundPeg } from '../../atlas/bank-round-page.ts';
import { type LookedAtDraft, newRef, PEG_FIELDS, type PegDraft, type PhotoDraft } from './draft.ts';
import { fromTemplate, the } from './elements.ts';
import { pegFindingOf } from './finding-of.ts';
import { foundHazards } from './found-hazards.ts';
import { locate } from './locate.ts';
import { photoList } from './photo-list.ts';

/** What the form of a peg works on, and whom it tells of changes. */
export interface PegFormContext {
  readonly data: BankRoundData;
  readonly peg: RoundPeg;
  readonly draft: PegDraft;
  readonly photos: readonly PhotoDraft[];
  readonly onChange: (draft: PegDraft) => void;
  readonly onPhoto: (photo: PhotoDraft) => void;
  readonly onPhotoRemoved: (id: string) => void;
  readonly onNext: () => void;
}

/** A draft for a peg where nothing has been noted: what the guide says of it goes along, for the merge. */
export function emptyPegDraft(ref: string, water: string, { peg, record, known, hazards }: RoundPeg): PegDraft {
  return { ref, water, peg, record, known, fields: {}, lookedAt: hazards.map(notLookedAt), found: [], seen: false };
}

function notLookedAt({ kind, place, foundOn, severity, likelihood }: RoundPeg['hazards'][number]): LookedAtDraft {
  return { kind, place, foundOn, severity, likelihood, did: '' };
}

/** Makes the form of one peg, filled with what was noted so far. Every change is told at once. */
export function pegForm(context: PegFormContext): HTMLFormElement {
  const { data, peg, onChange } = context;
  const form = fromTemplate<HTMLFormElement>('peg-form');
  let draft = context.draft;
  const change = (part: Partial<PegDraft>): void => {
    draft = { ...draft, ...part, seen: true };
    onChange(draft);
    showProblems(form, draft, data.lengthUnit);
  };

  fillFields(form, draft);
  for (const radio of form.querySelectorAll<HTMLInputElement>('[type="radio"][name]')) letGoOnSecondTap(radio);
  const showReason = (): void => {
    the('[data-reason]', form).hidden = draft.fields.status !== 'closed';
  };
  showReason();
  form.addEventListener('input', (event) => {
    const name = (event.target as HTMLInputElement).name as (typeof PEG_FIELDS)[number];
    if (!PEG_FIELDS.includes(name)) return;
    change({ fields: readFields(form) });
    showReason();
  });
  form.addEventListener('submit', (event) => event.preventDefault());

  const showKnown = knownHazards(form, peg, draft, (lookedAt) => change({ lookedAt }));
  the('[data-unchanged]', form).addEventListener('click', () => {
    const lookedAt = draft.lookedAt.map((hazard) => ({ ...hazard, did: 'checked' as const }));
    change({ lookedAt });
    showKnown(lookedAt);
    context.onNext();
  });

  const photos = photoList(the('[data-photos]', form), context);
  foundHazards(form, draft.found, photos, (found) => change({ found }));
  the<HTMLInputElement>('[data-add-photo]', form).addEventListener('change', async (event) => {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    input.value = '';
    if (file === undefined) return;
    const id = await photos.add(file);
    if (id === null) sayAt(form, 'That file is no picture the phone can open.');
    else change({});
  });

  the('[data-place]', form).addEventListener('click', async () => {
    sayAt(form, 'Looking for the position…');
    const located = await locate();
    if (typeof located === 'string') return sayAt(form, located);
    change({ at: located.at });
    sayAt(form, placeWords(located.at, located.accuracyMetres));
  });
  if (draft.at !== undefined) sayAt(form, placeWords(draft.at));
  the('[data-next]', form).addEventListener('click', () => context.onNext());
  showProblems(form, draft, data.lengthUnit);
  return form;
}

function fillFields(form: HTMLFormElement, { fields, known }: PegDraft): void {
  for (const name of PEG_FIELDS) {
    const text = fields[name];
    for (const control of form.querySelectorAll<HTMLInputElement>(`[name="${name}"]`)) {
      if (control.type === 'radio' || control.type === 'checkbox') control.checked = control.value === text;
      else if (text !== undefined) control.value = text;
    }
  }
  for (const element of form.querySelectorAll<HTMLElement>('[data-was]')) {
    const was = known[element.dataset.was as keyof typeof known];
    element.textContent = was === undefined ? 'the guide says nothing' : `the guide says ${was}`;
  }
  const status = form.querySelector<HTMLInputElement>(`[name="status"][value="${known.status ?? ''}"] + span`);
  if (status !== null) status.textContent += ', as in the guide';
}

/** A button touched by mistake can be let go: a second tap on it takes the choice back. */
function letGoOnSecondTap(radio: HTMLInputElement): void {
  let wasChecked = false;
  radio.addEventListener('pointerdown', () => {
    wasChecked = radio.checked;
  });
  radio.addEventListener('click', () => {
    if (!wasChecked) return;
    wasChecked = false;
    radio.checked = false;
    radio.dispatchEvent(new Event('input', { bubbles: true }));
  });
}

function readFields(form: HTMLFormElement): PegDraft['fields'] {
  const entries = new FormData(form);
  const typed = PEG_FIELDS.map((name) => [name, String(entries.get(name) ?? '')] as const);
  return Object.fromEntries(typed.filter(([, text]) => text !== ''));
}

/** Shows the guide's hazards with what was seen of each. Returns what shows a new state of them. */
function knownHazards(
  form: HTMLFormElement,
  peg: RoundPeg,
  draft: PegDraft,
  onChange: (lookedAt: readonly LookedAtDraft[]) => void,
): (lookedAt: readonly LookedAtDraft[]) => void {
  const box = the('[data-known]', form);
  box.hidden = draft.lookedAt.length === 0;
  let state = draft.lookedAt;
  const rows = state.map((hazard, index) => {
    const row = fromTemplate('known-hazard');
    const guide = peg.hazards.find(({ kind, place }) => kind === hazard.kind && place === hazard.place);
    the('[data-name]', row).textContent = guide?.name ?? hazard.kind;
    the('[data-where]', row).textContent = hazard.place;
    the('[data-looked]', row).textContent = guide?.lookedAt ?? `found ${hazard.foundOn}`;
    const name = `known-${newRef()}`;
    for (const radio of row.querySelectorAll<HTMLInputElement>('input')) {
      radio.name = name;
      radio.addEventListener('change', () => {
        state = state.map((one, at) => (at === index ? { ...one, did: radio.value as LookedAtDraft['did'] } : one));
        onChange(state);
      });
    }
    box.append(row);
    return row;
  });
  const show = (lookedAt: readonly LookedAtDraft[]): void => {
    state = lookedAt;
    for (const [index, { did }] of lookedAt.entries()) {
      for (const radio of rows[index]?.querySelectorAll<HTMLInputElement>('input') ?? [])
        radio.checked = radio.value === did;
    }
  };
  show(state);
  return show;
}

function showProblems(form: HTMLFormElement, draft: PegDraft, unit: 'm' | 'ft'): void {
  const { problems } = pegFindingOf(draft, unit);
  const list = the('[data-problems]', form);
  list.replaceChildren(
    ...problems.map(({ sentence }) => {
      const line = document.createElement('p');
      line.textContent = sentence;
      return line;
    }),
  );
}

function sayAt(form: HTMLFormElement, sentence: string): void {
  the('[data-place-said]', form).textContent = sentence;
}

function placeWords({ lat, lng }: { lat: number; lng: number }, accuracyMetres?: number): string {
  const accuracy = accuracyMetres === undefined ? '' : `, good to some ${Math.max(1, Math.round(accuracyMetres))} m`;
  return `Position kept: ${lat.toFixed(5)}, ${lng.toFixed(5)}${accuracy}.`;
}
