import type { BankRoundData } from '../../atlas/bank-round-page.ts';
import { daysBetween, formatDay, isDay } from '../../domain/day.ts';
import { newReference } from '../new-reference.ts';
import { clockDoubt } from './clock-doubt.ts';
import { type PegDraft, PLACE_MARK, type Round } from './draft.ts';
import { requireElement } from './elements.ts';
import { gaugeFindingOf } from './finding-of.ts';
import type { FormContext, OpenForm } from './form-context.ts';
import { setInvalid, showProblems } from './form-fields.ts';
import { handOverPanel } from './hand-over-panel.ts';
import { emptyPegDraft, pegForm } from './peg-form.ts';
import { emptyPlaceDraft, placeForm } from './place-form.ts';
import { roundNews } from './round-news.ts';
import { openRoundStore, type RoundStore } from './round-store.ts';
import { RoundWalk } from './round-walk.ts';
import { SaveLine } from './save-line.ts';
import { storageWords } from './storage-words.ts';
import { guardSecondTap } from './tap-guard.ts';
import { localDay } from './today.ts';

const data = JSON.parse(requireElement('#round-data').textContent ?? '') as BankRoundData;
const water = data.water.id;

/** One stop of the walk: a peg, or a place that is none behind its mark. */
interface Stop {
  readonly name: string;
  readonly element: HTMLElement;
  readonly empty: (ref: string) => PegDraft;
  readonly open: (context: FormContext) => OpenForm;
}

const stops: readonly Stop[] = [
  ...data.pegs.map((peg) => ({
    name: peg.peg,
    empty: (ref: string) => emptyPegDraft(ref, water, peg),
    open: (context: FormContext) => pegForm({ ...context, peg }),
  })),
  ...data.places.map((place) => ({
    name: `${PLACE_MARK}${place.id}`,
    empty: (ref: string) => emptyPlaceDraft(ref, water, place),
    open: (context: FormContext) => placeForm({ ...context, place }),
  })),
].flatMap((stop) => {
  const element = document.querySelector<HTMLElement>(`[data-stop="${CSS.escape(stop.name)}"]`);
  return element === null ? [] : [{ ...stop, element }];
});

guardSecondTap(document);
const store = await openRoundStore(document.body.dataset.guideBase ?? '/', data.venue.id).catch(() => null);
if (store === null) requireElement('#round-none').hidden = false;
else await start(store);

async function start(store: RoundStore): Promise<void> {
  const round = await store.openRound(data.venue.id);
  if (round !== undefined) return walk(store, round);
  const begin = requireElement<HTMLButtonElement>('#round-begin');
  begin.hidden = false;
  requireElement('#round-none-here').hidden = false;
  const clock = askForDay({ guideDay: data.guideDay });
  begin.addEventListener('click', async () => {
    const clockDays = clock();
    if (clockDays === null) return;
    const fresh: Round = {
      ref: newReference(),
      venue: data.venue,
      guideDay: data.guideDay,
      day: dayWith(clockDays),
      ...(clockDays === 0 ? {} : { clockDays }),
    };
    const begun = await store.beginRound(fresh).catch(() => null);
    if (begun === null) {
      requireElement('#round-none').hidden = false;
      return;
    }
    begin.hidden = true;
    requireElement('#round-none-here').hidden = true;
    await walk(store, begun);
    requireElement('#round-now').focus();
  });
}

async function walk(store: RoundStore, round: Round): Promise<void> {
  const whole = (await store.whole(round.ref)) ?? { round, pegs: [], gauges: [], photos: [] };
  const saving = new SaveLine(
    requireElement('#round-saved'),
    async () => (await store.whole(round.ref).catch(() => undefined)) !== undefined,
    () => {
      requireElement('#round-gone').hidden = false;
    },
  );
  let opened: { readonly stop: Stop; readonly form: OpenForm } | null = null;
  const tell = roundNews(round.ref, async () => {
    const isWalked = await walking.catchUp();
    if (!isWalked) return handedOver();
    showAll();
    const draft = opened === null ? undefined : walking.draft(water, opened.stop.name);
    if (opened !== null && draft !== undefined) opened.form.refresh(draft);
  });
  const walking = new RoundWalk(whole, store, saving, tell);
  requireElement('#round-now').hidden = false;
  requireElement('#round-state').hidden = false;
  requireElement('#round-name').textContent = nameOf(round);
  storageWords().then((words) => {
    requireElement('#round-storage').textContent = words;
  });
  const undo = requireElement<HTMLButtonElement>('#round-undo');

  const showStop = ({ name, element }: Stop): void => {
    const draft = walking.draft(water, name);
    const isSeen = draft?.seen === true;
    // A tick would say more than was done where a listed hazard waits to be looked at.
    const isDone = isSeen && !isHazardLeft(draft);
    element.classList.toggle('seen', isDone);
    requireElement('[data-state]', element).textContent = isSeen ? stateWords(draft) : '';
    document.querySelector(`.water-map a[href="${element.dataset.sheet ?? ''}"]`)?.classList.toggle('seen', isDone);
  };
  const showAll = (): void => {
    for (const stop of stops) showStop(stop);
    const seen = data.pegs.filter(({ peg }) => walking.draft(water, peg)?.seen === true).length;
    requireElement('#round-count').textContent = `${seen} of ${data.pegs.length} pegs seen`;
    undo.hidden = !walking.canUndo;
    const last = walking.round.lastAt;
    const goOn = requireElement<HTMLButtonElement>('#round-go-on');
    goOn.hidden = last === undefined || last.water !== water || opened !== null;
    goOn.textContent = `Go on where I was: ${labelOf(last?.peg ?? '')}`;
  };

  const open = (stop: Stop): void => {
    close();
    const empty = stop.empty(round.ref);
    const form = stop.open({
      data,
      draft: walking.draft(water, stop.name) ?? empty,
      photos: walking.photosAt(water, stop.name),
      today: () => walking.today(),
      onChange: (draft) => {
        walking.note(empty, draft);
        if (walking.round.lastAt?.peg !== stop.name) walking.changeRound({ lastAt: { water, peg: stop.name } });
        showAll();
      },
      onPhoto: (photo) => walking.notePhoto(photo),
      onPhotoRemoved: (id) => walking.removePhoto(id),
      onNext: () => next(stop),
      onTakeBack: () => {
        walking.takeBack(empty);
        opened?.form.refresh(empty);
        showAll();
      },
      onFix: (takenAt) => doubtClock(takenAt),
    });
    opened = { stop, form };
    requireElement('[data-form]', stop.element).replaceChildren(form.form);
    const button = requireElement('[data-open]', stop.element);
    button.setAttribute('aria-expanded', 'true');
    stop.element.scrollIntoView({ block: 'start' });
    button.focus({ preventScroll: true });
    showAll();
  };
  const close = (): void => {
    opened = null;
    closeForms();
  };
  const next = (stop: Stop): void => {
    const following = stops[stops.indexOf(stop) + 1];
    if (following !== undefined) {
      open(following);
      return;
    }
    close();
    requireElement('#round-end').scrollIntoView();
    requireElement('#round-end').focus({ preventScroll: true });
  };

  for (const stop of stops) {
    const button = requireElement<HTMLButtonElement>('[data-open]', stop.element);
    button.hidden = false;
    button.onclick = () => {
      if (button.getAttribute('aria-expanded') === 'true') {
        close();
        showAll();
      } else open(stop);
    };
    const mark = document.querySelector<SVGAElement>(`.water-map a[href="${stop.element.dataset.sheet ?? ''}"]`);
    mark?.addEventListener('click', (event) => {
      event.preventDefault();
      open(stop);
    });
  }
  undo.addEventListener('click', () => {
    const draft = walking.undo();
    if (draft !== null && opened?.stop.name === draft.peg) opened.form.refresh(draft);
    showAll();
    requireElement('#round-saved').textContent = draft === null ? '' : `Taken back at ${labelOf(draft.peg)}.`;
  });
  requireElement('#round-go-on').addEventListener('click', () => {
    const stop = stops.find(({ name }) => name === walking.round.lastAt?.peg);
    if (stop !== undefined) open(stop);
  });
  requireElement('#round-put-back').addEventListener('click', async () => {
    await walking.putBack().then(
      () => {
        requireElement('#round-gone').hidden = true;
      },
      () => {
        requireElement('#round-saved').textContent = 'The phone did not let it be put back: hand the round over now.';
      },
    );
  });
  const role = requireElement<HTMLInputElement>('#round-by');
  role.value = round.by ?? '';
  role.addEventListener('input', () => walking.changeRound({ by: role.value }));

  let lastFix: number | undefined;
  const doubtClock = (takenAt: number): void => {
    lastFix = takenAt;
    askAboutClock();
  };
  const askAboutClock = (): void => {
    // What the bailiff said of the clock stands for the round.
    if (walking.round.clockDays !== undefined) return;
    const noted = walking.whole().pegs.flatMap(({ seenOn }) => (seenOn === undefined ? [] : [seenOn]));
    const clock = askForDay({ guideDay: data.guideDay, fixAt: lastFix, lastNoted: noted.sort().at(-1) });
    requireElement('#round-clock-set').onclick = () => {
      const clockDays = clock();
      if (clockDays === null) return;
      walking.changeRound({ clockDays });
      requireElement('#round-clock').hidden = true;
    };
  };
  askAboutClock();

  gaugeForm(walking, round.ref);
  showAll();
  const panel = handOverPanel(round, {
    store,
    whole: async () => (await store.whole(round.ref).catch(() => undefined)) ?? walking.whole(),
    lengthUnit: data.lengthUnit,
    waters: data.waters,
    settled: async () => {
      await saving.retry();
      return saving.isSaved;
    },
    onChange: (changed) => {
      tell({ ref: changed.ref });
      if (changed.handedOver !== undefined) handedOver();
      else requireElement('#round-name').textContent = nameOf(changed);
    },
    onProblem: ({ water: at, peg }) => {
      const wanted = stops.find(({ name }) => at === water && name === peg);
      if (wanted !== undefined) open(wanted);
      else requireElement('#round-now').scrollIntoView();
    },
  });
  requireElement('#round-end').append(panel);
}

/**
 * Shows why the clock is in doubt and asks for the day; hidden where nothing speaks against it.
 * @returns how many days the clock is to be moved by; null while that is not answered
 */
function askForDay(witness: Parameters<typeof clockDoubt>[1]): () => number | null {
  const doubt = clockDoubt(new Date(), witness);
  const box = requireElement('#round-clock');
  const day = requireElement<HTMLInputElement>('#round-clock-day');
  box.hidden = doubt === null;
  requireElement('#round-clock-why').textContent = doubt ?? '';
  return () => {
    if (doubt === null) return 0;
    if (isDay(day.value) && day.value >= witness.guideDay) {
      setInvalid(day, false);
      return daysBetween(localDay(), day.value);
    }
    setInvalid(day, true);
    requireElement('#round-clock-why').textContent =
      `${doubt} Choose the day it is, ${formatDay(witness.guideDay)} or later: what is noted keeps its day.`;
    day.focus();
    return null;
  };
}

function dayWith(clockDays: number): string {
  const now = new Date();
  now.setDate(now.getDate() + clockDays);
  return localDay(now);
}

function nameOf({ ref, day }: Round): string {
  return `Round ${ref} of ${formatDay(day)}`;
}

/** "peg 14", "Lane gate", "the water". */
function labelOf(name: string): string {
  if (!name.startsWith(PLACE_MARK)) return `peg ${name}`;
  return data.places.find(({ id }) => `${PLACE_MARK}${id}` === name)?.name ?? 'a place';
}

/** A round that was handed over is not changed any more: what is noted from now on goes into a new one. */
function handedOver(): void {
  closeForms();
  for (const { element } of stops) requireElement<HTMLButtonElement>('[data-open]', element).disabled = true;
  requireElement('#round-gauge').hidden = true;
  requireElement('#round-undo').hidden = true;
  requireElement('#round-go-on').hidden = true;
  requireElement('#round-again').hidden = false;
}

function closeForms(): void {
  for (const { element } of stops) {
    requireElement('[data-form]', element).replaceChildren();
    requireElement('[data-open]', element).setAttribute('aria-expanded', 'false');
  }
}

function gaugeForm(walking: RoundWalk, ref: string): void {
  const form = requireElement<HTMLFormElement>('#round-gauge');
  const level = requireElement<HTMLInputElement>('[name="level"]', form);
  const temperature = requireElement<HTMLInputElement>('[name="temperature"]', form);
  const start = walking.gauge(water);
  level.value = start?.level ?? '';
  temperature.value = start?.temperature ?? '';
  const showFaults = (): void => {
    const reading = walking.gauge(water);
    showProblems(form, reading === undefined ? [] : (gaugeFindingOf(reading, data.lengthUnit)?.problems ?? []));
  };
  showFaults();
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('input', () => {
    walking.noteGauge({ ref, water, level: level.value, temperature: temperature.value });
    showFaults();
  });
}

function isHazardLeft({ lookedAt }: PegDraft): boolean {
  return lookedAt.some(({ did }) => did === '');
}

function stateWords(draft: PegDraft): string {
  const { fields, found, lookedAt } = draft;
  const words = [isHazardLeft(draft) ? 'started' : 'seen'];
  if (fields.platform !== undefined) words.push(`platform ${fields.platform}`);
  if (fields.status === 'closed' || fields.closing !== undefined) words.push('closed');
  if (fields.kit !== undefined) words.push(fields.kit === 'in-place' ? 'kit in place' : `kit ${fields.kit}`);
  if (found.length > 0) words.push(found.length === 1 ? '1 hazard found' : `${found.length} hazards found`);
  const gone = lookedAt.filter(({ did }) => did === 'cleared').length;
  if (gone > 0) words.push(gone === 1 ? '1 hazard gone' : `${gone} hazards gone`);
  if (fields.cut !== undefined) words.push('cut back');
  if (fields['notice-title'] !== undefined) words.push('notice written');
  return words.join(', ');
}
