import type { RoundWater } from '../../atlas/bank-round-page.ts';
import type { RoundFile } from '../../content/round-file/round-file.ts';
import { addDays, type Day, daysBetween, isDay } from '../../domain/day.ts';
import { button, make } from '../make.ts';
import { PLACE_MARK, type Round, type WholeRound } from './draft.ts';
import { clockTime, fromTemplate, requireElement } from './elements.ts';
import type { Problem } from './finding-of.ts';
import { canShare, downloadFile, type HandedOver, roundAsFile, shareFile } from './hand-over.ts';
import { roundFileOf } from './round-file-of.ts';
import type { RoundStore } from './round-store.ts';

export interface HandOverContext {
  readonly store: RoundStore;
  /** Everything noted: from the phone, or from the page where the phone has it no more. */
  readonly whole: () => Promise<WholeRound | undefined>;
  /** Every water with its pegs, so that what was not visited is said. */
  readonly waters: readonly RoundWater[];
  readonly lengthUnit: 'm' | 'ft';
  /** Waits for what is typed to be saved; false where it could not be. */
  readonly settled: () => Promise<boolean>;
  readonly onChange: (round: Round) => void;
  /** Leads the person to what has to be mended. */
  readonly onProblem: (problem: Problem) => void;
}

/** The part of the page that turns a round into its file and passes it on. Made in two steps: phones share only at a tap. */
export function handOverPanel(round: Round, context: HandOverContext): HTMLElement {
  const panel = fromTemplate('hand-over');
  const said = requireElement('[data-said]', panel);
  const ready = requireElement('[data-ready]', panel);
  const day = requireElement<HTMLInputElement>('[data-day]', panel);
  day.value = round.day;
  day.addEventListener('change', async () => {
    const now = await context.whole();
    if (now === undefined || !isDay(day.value)) return;
    const moved = movedTo(now, day.value);
    await context.store.saveWhole(moved);
    context.onChange(moved.round);
    ready.hidden = true;
  });

  requireElement('[data-make]', panel).addEventListener('click', async () => {
    ready.hidden = true;
    said.replaceChildren();
    const isSaved = await context.settled();
    const whole = await context.whole();
    if (whole === undefined) {
      said.textContent = 'This round is no longer on this phone: the browser has cleared it.';
      return;
    }
    const made = roundFileOf(whole, context.lengthUnit);
    if ('problems' in made) return showProblems(said, made.problems, context.onProblem);
    if (isEmpty(made.file)) {
      said.textContent = 'Nothing has been noted yet.';
      return;
    }
    showUnvisited(requireElement('[data-unvisited]', panel), made.file, context.waters);
    offer(made.file);
    if (!isSaved) said.textContent = 'The last change could not be saved on the phone and is not in this file.';
  });

  const offer = (roundFile: RoundFile): void => {
    const file = roundAsFile(roundFile);
    requireElement('[data-file]', panel).textContent =
      `${file.name}: ${countWords(roundFile)}, ${sizeWords(file.size)}`;
    const share = requireElement<HTMLButtonElement>('[data-share]', panel);
    share.hidden = !canShare(file);
    share.onclick = async () => done(await shareFile(file));
    requireElement<HTMLButtonElement>('[data-save]', panel).onclick = () => done(downloadFile(file));
    ready.hidden = false;
  };
  const done = async (how: HandedOver): Promise<void> => {
    if (how === 'cancelled') return;
    const now = await context.whole();
    if (now === undefined) return;
    const handed = { ...now.round, handedOver: new Date().toISOString() };
    const isKept = await context.store
      .changeRound(handed.ref, () => handed)
      .then(
        () => true,
        () => false,
      );
    const words = how === 'shared' ? 'Handed over' : 'Saved among this phone’s downloads: send that file to the club';
    said.textContent = `${words}, ${clockTime(new Date())}. ${isKept ? 'The round stays on this phone until you delete it' : 'It is no longer on this phone: the file is all there is'}.`;
    context.onChange(handed);
  };
  return panel;
}

/** Every day of the round moved by as many days as its first: the clock was wrong. */
function movedTo(whole: WholeRound, day: Day): WholeRound {
  const by = daysBetween(whole.round.day, day);
  const moved = <T extends { readonly day?: Day }>(one: T): T =>
    one.day === undefined ? one : { ...one, day: addDays(one.day, by) };
  return {
    round: { ...whole.round, day },
    gauges: whole.gauges.map(moved),
    photos: whole.photos,
    pegs: whole.pegs.map((draft) => ({
      ...draft,
      ...(draft.seenOn === undefined ? {} : { seenOn: addDays(draft.seenOn, by) }),
      ...(draft.days === undefined
        ? {}
        : { days: Object.fromEntries(Object.entries(draft.days).map(([name, on]) => [name, addDays(on, by)])) }),
      lookedAt: draft.lookedAt.map(moved),
      found: draft.found.map(moved),
    })),
  };
}

function isEmpty({ pegs, gauges, places = [], notices = [] }: RoundFile): boolean {
  return pegs.length + gauges.length + places.length + notices.length === 0;
}

/** Says which pegs nobody visited: nothing about them is in the file, and that is not the same as nothing new. */
function showUnvisited(list: HTMLElement, { pegs, places = [] }: RoundFile, waters: readonly RoundWater[]): void {
  const lines = waters.flatMap(({ id, name, pegs: all, kit }) => {
    const seen = new Set(pegs.filter(({ water }) => water === id).map(({ peg }) => peg));
    const looked = new Set(
      places.filter(({ water, kit: state }) => water === id && state !== undefined).map(({ place }) => place),
    );
    if (seen.size === 0 && looked.size === 0) return [`${name}: not walked`];
    const left = all.filter((peg) => !seen.has(peg));
    const unchecked = kit.filter((one) => !looked.has(one.id)).map((one) => one.name);
    return [
      left.length === 0 ? `${name}: every peg visited` : `${name}, not visited: ${left.join(', ')}`,
      ...(unchecked.length === 0 ? [] : [`${name}, rescue kit not checked: ${unchecked.join(', ')}`]),
    ];
  });
  list.replaceChildren(...lines.map((line) => make('li', {}, line)));
}

function showProblems(said: HTMLElement, problems: readonly Problem[], onProblem: (problem: Problem) => void): void {
  const heading =
    problems.length === 1
      ? 'One thing has to be put right first:'
      : `${problems.length} things have to be put right first:`;
  const items = problems.map((problem) => {
    const isOfPlace = problem.peg === '' || problem.peg.startsWith(PLACE_MARK);
    const words = isOfPlace ? problem.sentence : `Peg ${problem.peg}: ${problem.sentence}`;
    return make(
      'li',
      {},
      button(words, () => onProblem(problem)),
    );
  });
  said.replaceChildren(make('p', {}, heading), make('ul', {}, ...items));
}

function countWords({ pegs, places = [], notices = [], photos }: RoundFile): string {
  const count = (number: number, one: string, many: string) => `${number} ${number === 1 ? one : many}`;
  return [
    count(pegs.length, 'peg', 'pegs'),
    ...(places.length === 0 ? [] : [count(places.length, 'other place', 'other places')]),
    ...(notices.length === 0 ? [] : [count(notices.length, 'notice', 'notices')]),
    ...(photos.length === 0 ? [] : [count(photos.length, 'photo', 'photos')]),
  ].join(', ');
}

function sizeWords(bytes: number): string {
  return bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1000))} KB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
