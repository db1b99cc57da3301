import type { RoundFile } from '../../content/round-file/round-file.ts';
import { isDay } from '../../domain/day.ts';
import type { Round } from './draft.ts';
import { clockTime, fromTemplate, the } from './elements.ts';
import type { Problem } from './finding-of.ts';
import { canShare, downloadFile, type HandedOver, roundAsFile, shareFile } from './hand-over.ts';
import { roundFileOf } from './round-file-of.ts';
import type { RoundStore } from './round-store.ts';

export interface HandOverContext {
  readonly store: RoundStore;
  readonly ref: string;
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
  const said = the('[data-said]', panel);
  const ready = the('[data-ready]', panel);
  const day = the<HTMLInputElement>('[data-day]', panel);
  day.value = round.day;
  day.addEventListener('change', async () => {
    const now = await context.store.whole(context.ref);
    if (now === undefined || !isDay(day.value)) return;
    await context.store.saveRound({ ...now.round, day: day.value });
    context.onChange({ ...now.round, day: day.value });
    ready.hidden = true;
  });

  the('[data-make]', panel).addEventListener('click', async () => {
    ready.hidden = true;
    said.replaceChildren();
    const isSaved = await context.settled();
    const whole = await context.store.whole(context.ref);
    if (whole === undefined) return;
    const made = roundFileOf(whole, context.lengthUnit);
    if ('problems' in made) return showProblems(said, made.problems, context.onProblem);
    if (made.file.pegs.length === 0 && made.file.gauges.length === 0) {
      said.textContent = 'Nothing has been noted yet.';
      return;
    }
    offer(made.file);
    if (!isSaved) said.textContent = 'The last change could not be saved on the phone and is not in this file.';
  });

  const offer = (roundFile: RoundFile): void => {
    const file = roundAsFile(roundFile);
    the('[data-file]', panel).textContent = `${file.name}: ${countWords(roundFile)}, ${sizeWords(file.size)}`;
    const share = the<HTMLButtonElement>('[data-share]', panel);
    share.hidden = !canShare(file);
    share.onclick = async () => done(await shareFile(file));
    the<HTMLButtonElement>('[data-save]', panel).onclick = () => done(downloadFile(file));
    ready.hidden = false;
  };
  const done = async (how: HandedOver): Promise<void> => {
    if (how === 'cancelled') return;
    const now = await context.store.whole(context.ref);
    if (now === undefined) return;
    const handed = { ...now.round, handedOver: new Date().toISOString() };
    await context.store.saveRound(handed);
    const words = how === 'shared' ? 'Handed over' : 'Saved among this phone’s downloads: send that file to the club';
    said.textContent = `${words}, ${clockTime(new Date())}. The round stays on this phone until you delete it.`;
    context.onChange(handed);
  };
  return panel;
}

function showProblems(said: HTMLElement, problems: readonly Problem[], onProblem: (problem: Problem) => void): void {
  const heading = document.createElement('p');
  heading.textContent =
    problems.length === 1 ? 'One thing has to be mended first:' : `${problems.length} things have to be mended first:`;
  const list = document.createElement('ul');
  for (const problem of problems) {
    const button = document.createElement('button');
    button.type = 'button';
    button.className = 'wide-button';
    button.textContent = problem.peg === '' ? problem.sentence : `Peg ${problem.peg}: ${problem.sentence}`;
    button.addEventListener('click', () => onProblem(problem));
    const item = document.createElement('li');
    item.append(button);
    list.append(item);
  }
  said.replaceChildren(heading, list);
}

function countWords({ pegs, photos }: RoundFile): string {
  const count = (number: number, one: string, many: string) => `${number} ${number === 1 ? one : many}`;
  const words = count(pegs.length, 'peg', 'pegs');
  return photos.length === 0 ? words : `${words}, ${count(photos.length, 'photo', 'photos')}`;
}

function sizeWords(bytes: number): string {
  return bytes < 1e6 ? `${Math.max(1, Math.round(bytes / 1000))} KB` : `${(bytes / 1e6).toFixed(1)} MB`;
}
