import type { BankRoundData, RoundPeg } from '../../atlas/bank-round-page.ts';
import { formatDay } from '../../domain/day.ts';
import { type GaugeDraft, newRef, type PegDraft, type PhotoDraft, type Round } from './draft.ts';
import { the } from './elements.ts';
import { handOverPanel } from './hand-over-panel.ts';
import { emptyPegDraft, pegForm } from './peg-form.ts';
import { openRoundStore, type RoundStore } from './round-store.ts';
import { SaveLine } from './save-line.ts';
import { localDay } from './today.ts';

const data = JSON.parse(the('#round-data').textContent ?? '') as BankRoundData;
const stops = new Map(
  [...document.querySelectorAll<HTMLElement>('[data-stop]')].map((stop) => [stop.dataset.stop ?? '', stop] as const),
);

const store = await openRoundStore().catch(() => null);
if (store === null) the('#round-none').hidden = false;
else await start(store);

async function start(store: RoundStore): Promise<void> {
  const round = await store.openRound(data.venue.id);
  if (round !== undefined) return walk(store, round);
  const begin = the<HTMLButtonElement>('#round-begin');
  begin.hidden = false;
  begin.addEventListener('click', async () => {
    const fresh: Round = { ref: newRef(), venue: data.venue, guideDay: data.guideDay, day: localDay() };
    await store.saveRound(fresh);
    // Asks that the browser does not clear the round away when the phone runs short.
    await navigator.storage?.persist?.();
    begin.hidden = true;
    await walk(store, fresh);
    the('#round-now').focus();
  });
}

async function walk(store: RoundStore, round: Round): Promise<void> {
  const whole = await store.whole(round.ref);
  const drafts = new Map(whole?.pegs.filter(({ water }) => water === data.water.id).map((draft) => [draft.peg, draft]));
  let photos: readonly PhotoDraft[] = whole?.photos ?? [];
  const saving = new SaveLine(the('#round-saved'));
  the('#round-now').hidden = false;
  the('#round-state').hidden = false;
  the('#round-name').textContent = `Round ${round.ref} of ${formatDay(round.day)}`;

  const showStop = ({ peg }: RoundPeg): void => {
    const draft = drafts.get(peg);
    const stop = stops.get(peg);
    stop?.classList.toggle('seen', draft?.seen === true);
    if (stop !== undefined) the('[data-state]', stop).textContent = draft?.seen === true ? stateWords(draft) : '';
    document
      .querySelector(`.water-map a[href="${stop?.dataset.sheet ?? ''}"]`)
      ?.classList.toggle('seen', draft?.seen === true);
    const seen = data.pegs.filter((one) => drafts.get(one.peg)?.seen === true).length;
    the('#round-count').textContent = `${seen} of ${data.pegs.length} pegs seen`;
  };

  const open = (peg: RoundPeg): void => {
    closeForms();
    const stop = stops.get(peg.peg);
    if (stop === undefined) return;
    const form = pegForm({
      data,
      peg,
      draft: drafts.get(peg.peg) ?? emptyPegDraft(round.ref, data.water.id, peg),
      photos: photos.filter((photo) => photo.water === data.water.id && photo.peg === peg.peg),
      onChange: (draft) => {
        drafts.set(peg.peg, draft);
        showStop(peg);
        saving.save(`peg ${peg.peg}`, () => store.savePeg(draft));
      },
      onPhoto: (photo) => {
        photos = [...photos.filter(({ id }) => id !== photo.id), photo];
        saving.save(`photo ${photo.id}`, () => store.savePhoto(photo));
      },
      onPhotoRemoved: (id) => {
        photos = photos.filter((photo) => photo.id !== id);
        saving.save(`photo ${id}`, () => store.removePhoto(round.ref, id));
      },
      onNext: () => next(peg),
    });
    the('[data-form]', stop).replaceChildren(form);
    const button = the('[data-open]', stop);
    button.setAttribute('aria-expanded', 'true');
    stop.scrollIntoView({ block: 'start' });
    button.focus({ preventScroll: true });
  };
  const next = (peg: RoundPeg): void => {
    const following = data.pegs[data.pegs.indexOf(peg) + 1];
    if (following !== undefined) {
      open(following);
      return;
    }
    closeForms();
    the('#round-end').scrollIntoView();
    the('#round-end').focus({ preventScroll: true });
  };

  for (const peg of data.pegs) {
    const stop = stops.get(peg.peg);
    if (stop === undefined) continue;
    const button = the<HTMLButtonElement>('[data-open]', stop);
    button.hidden = false;
    button.onclick = () => (button.getAttribute('aria-expanded') === 'true' ? closeForms() : open(peg));
    const mark = document.querySelector<SVGAElement>(`.water-map a[href="${stop.dataset.sheet ?? ''}"]`);
    mark?.addEventListener('click', (event) => {
      event.preventDefault();
      open(peg);
    });
    showStop(peg);
  }
  gaugeForm(
    whole?.gauges.find(({ water }) => water === data.water.id),
    round.ref,
    (gauge) => {
      saving.save('gauge', () => store.saveGauge(gauge));
    },
  );

  const panel = handOverPanel(round, {
    store,
    ref: round.ref,
    lengthUnit: data.lengthUnit,
    settled: async () => {
      await saving.save('hand over', () => Promise.resolve());
      return saving.isSaved;
    },
    onChange: (changed) => {
      if (changed.handedOver !== undefined) handedOver();
      else the('#round-name').textContent = `Round ${changed.ref} of ${formatDay(changed.day)}`;
    },
    onProblem: ({ water, peg }) => {
      const wanted = data.pegs.find((one) => water === data.water.id && one.peg === peg);
      if (wanted !== undefined) open(wanted);
      else the('#round-now').scrollIntoView();
    },
  });
  the('#round-end').append(panel);
}

/** A round that was handed over is not changed any more: what is noted from now on goes into a new one. */
function handedOver(): void {
  closeForms();
  for (const stop of stops.values()) the<HTMLButtonElement>('[data-open]', stop).disabled = true;
  the('#round-gauge').hidden = true;
  the('#round-again').hidden = false;
}

function closeForms(): void {
  for (const stop of stops.values()) {
    the('[data-form]', stop).replaceChildren();
    the('[data-open]', stop).setAttribute('aria-expanded', 'false');
  }
}

function gaugeForm(start: GaugeDraft | undefined, ref: string, onChange: (gauge: GaugeDraft) => void): void {
  const form = the<HTMLFormElement>('#round-gauge');
  const level = the<HTMLInputElement>('[name="level"]', form);
  const temperature = the<HTMLInputElement>('[name="temperature"]', form);
  level.value = start?.level ?? '';
  temperature.value = start?.temperature ?? '';
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('input', () => {
    onChange({ ref, water: data.water.id, level: level.value, temperature: temperature.value });
  });
}

function stateWords(draft: PegDraft): string {
  const words = ['seen'];
  if (draft.fields.status === 'closed') words.push('closed');
  if (draft.found.length > 0)
    words.push(draft.found.length === 1 ? '1 hazard found' : `${draft.found.length} hazards found`);
  const gone = draft.lookedAt.filter(({ did }) => did === 'cleared').length;
  if (gone > 0) words.push(gone === 1 ? '1 hazard gone' : `${gone} hazards gone`);
  if (draft.fields.cut !== undefined) words.push('cut back');
  return words.join(', ');
}
