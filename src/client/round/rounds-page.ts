import type { RoundWater } from '../../atlas/bank-round-page.ts';
import { readRoundFile } from '../../content/round-file/read-round-file.ts';
import { ROUND_LIMITS } from '../../content/round-file/round-limits.ts';
import { formatDay } from '../../domain/day.ts';
import type { Round } from './draft.ts';
import { clockTime, fromTemplate, requireElement } from './elements.ts';
import { handOverPanel } from './hand-over-panel.ts';
import { wholeRoundOf } from './round-file-of.ts';
import { openRoundStore, type RoundStore } from './round-store.ts';
import { storageWords } from './storage-words.ts';
import { guardSecondTap } from './tap-guard.ts';
import { localDay } from './today.ts';

const here = requireElement('#rounds-here');
const waters = JSON.parse(here.dataset.waters ?? '[]') as RoundWater[];
const lengthUnit = here.dataset.lengthUnit === 'ft' ? 'ft' : 'm';

const store = await openRoundStore(document.body.dataset.guideBase ?? '/', here.dataset.venue ?? '').catch(() => null);
if (store === null) requireElement('#round-none').hidden = false;
else {
  here.hidden = false;
  guardSecondTap(document);
  storageWords().then((words) => {
    requireElement('#rounds-storage').textContent = words;
  });
  await list(store);
  requireElement<HTMLInputElement>('#round-read-back').addEventListener('change', (event) => readBack(store, event));
}

async function list(store: RoundStore): Promise<void> {
  const rounds = (await store.rounds()).filter(({ venue }) => venue.id === here.dataset.venue);
  requireElement('#rounds').replaceChildren(...rounds.map((round) => roundItem(store, round)));
  requireElement('#rounds-empty').hidden = rounds.length > 0;
}

function roundItem(store: RoundStore, round: Round): HTMLElement {
  const item = fromTemplate('round');
  const show = (now: Round): void => {
    requireElement('[data-name]', item).textContent = `Round ${now.ref} of ${formatDay(now.day)}`;
    requireElement('[data-state]', item).textContent = stateWords(now);
  };
  show(round);
  const panel = handOverPanel(round, {
    store,
    whole: () => store.whole(round.ref),
    waters,
    lengthUnit,
    settled: () => Promise.resolve(true),
    onChange: show,
    onProblem: ({ water }) => location.assign(`${water}/`),
  });
  requireElement('[data-panel]', item).append(panel);
  const confirm = requireElement('[data-confirm]', item);
  requireElement('[data-delete]', item).addEventListener('click', () => {
    confirm.hidden = false;
    requireElement('[data-really]', confirm).focus();
  });
  requireElement('[data-keep]', confirm).addEventListener('click', () => {
    confirm.hidden = true;
  });
  requireElement('[data-really]', confirm).addEventListener('click', async () => {
    await store.removeRound(round.ref);
    await list(store);
  });
  return item;
}

function stateWords({ handedOver, lastAt }: Round): string {
  const where = waters.find(({ id }) => id === lastAt?.water)?.name;
  if (handedOver === undefined) return where === undefined ? 'being walked' : `being walked, last on ${where}`;
  const at = new Date(handedOver);
  return `handed over ${formatDay(localDay(at))}, ${clockTime(at)}`;
}

async function readBack(store: RoundStore, event: Event): Promise<void> {
  const input = event.target as HTMLInputElement;
  const [file] = input.files ?? [];
  input.value = '';
  if (file === undefined) return;
  const said = requireElement('#read-back-said');
  if (file.size > ROUND_LIMITS.fileBytes) {
    said.textContent = `${file.name} is larger than any bank round. Nothing was read.`;
    return;
  }
  const read = readRoundFile(await file.text(), file.name);
  if (read.round === null) {
    said.textContent = read.faults
      .map(
        ({ field, found, expected, mend }) =>
          `${field === '' ? '' : `${field}: `}found ${found}, expected ${expected}. ${mend}`,
      )
      .join(' ');
    return;
  }
  if (read.round.venue.id !== here.dataset.venue) {
    said.textContent = `That is a round of ${read.round.venue.name}. Nothing was read.`;
    return;
  }
  const kept = (await store.rounds()).find(({ ref }) => ref === read.round.ref);
  if (kept !== undefined && kept.handedOver === undefined) {
    said.textContent = `Round ${kept.ref} is on this phone already and being walked. Delete it first if the file is to take its place.`;
    return;
  }
  try {
    await store.saveWhole(wholeRoundOf(read.round, lengthUnit));
    said.textContent = `Round ${read.round.ref} was loaded; carry on with it on the page of its water.`;
    await list(store);
  } catch {
    said.textContent = 'The phone is full: the round was not read in. Nothing else was lost.';
  }
}
