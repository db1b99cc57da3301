import type { PegLine } from '../../atlas/peg-line.ts';
import { type Month, monthOf } from '../../domain/day.ts';
import { type OrderedPeg, orderedPegs, type PegOrder } from '../../domain/peg-order.ts';
import { localDay } from '../local-day.ts';
import { sayAll } from '../page-words.ts';
import { phoneStore } from '../phone-store.ts';
import { addressWithPegs, keepPegs, keptPegs, withPeg } from './kept-pegs.ts';

/**
 * Orders the table of a water's pegs, leaves in those with the features asked for, and keeps up to four to be compared.
 * Without it the table stands whole, in the order of the numbers.
 */
const form = document.querySelector<HTMLFormElement>('[data-peg-choice]');
const body = document.querySelector<HTMLTableSectionElement>('table.pegs tbody');
if (form !== null && body !== null) followChoice(form, body);

function followChoice(form: HTMLFormElement, body: HTMLTableSectionElement): void {
  const rows = [...body.rows];
  const order = form.elements.namedItem('order') as HTMLSelectElement;
  const wanted = [...form.querySelectorAll<HTMLInputElement>('[name="with"]')];
  const said = form.querySelector<HTMLElement>('[role="status"]')!;
  const month = document.querySelector<HTMLSelectElement>('select[name="month"]');
  const faults = readAddress(order, wanted);

  const show = () => {
    const features = wanted.filter(({ checked }) => checked).map(({ value }) => value);
    const shown = rows.filter((row) => has(row, features));
    const asked = order.value as PegOrder;
    const known = shown.map((row) => ({ ...orderedPeg(row, monthShown(month)), row }));
    for (const row of rows) row.hidden = !shown.includes(row);
    body.append(...orderedPegs(known, asked).map(({ row }) => row));
    for (const { row, isClosed } of known) sayWorth(row, isClosed ? 'number' : asked, monthShown(month));
    const count = features.length === 0 ? '' : `${shown.length} of ${rows.length} pegs.`;
    said.textContent = [...faults, count].filter((words) => words !== '').join(' ');
  };
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('change', (event) => {
    if (event.target instanceof HTMLInputElement && event.target.name === 'keep') return;
    faults.length = 0;
    writeAddress(order, wanted);
    show();
  });
  month?.addEventListener('change', show);
  // What has closed since, and what closes today, goes behind the others.
  document.addEventListener('pegs-marked', show);
  show();
  keepSome(form, rows);
}

function has(row: HTMLTableRowElement, features: readonly string[]): boolean {
  const own = (row.dataset.features ?? '').split(' ');
  return features.every((feature) => own.includes(feature));
}

function orderedPeg(row: HTMLTableRowElement, month: Month): OrderedPeg {
  const { peg = '', depth, walk, stepFree } = row.dataset;
  const worths = Object.entries(worthsOf(row)).map(([bag, months]) => [bag, months[month - 1]?.[0] ?? null] as const);
  return {
    peg,
    isClosed: row.querySelector('.closed-words:not([hidden]), .closed-now') !== null,
    depthMetres: numberOf(depth),
    walkMetres: numberOf(walk),
    stepFree: stepFree === undefined ? null : stepFree === 'true',
    worths: Object.fromEntries(worths),
  };
}

type Worths = NonNullable<PegLine['order']['worths']>;

function worthsOf(row: HTMLTableRowElement): Worths {
  return JSON.parse(row.dataset.worths ?? '{}') as Worths;
}

function numberOf(text: string | undefined): number | null {
  return text === undefined || text === '' ? null : Number(text);
}

/** Where pegs are ordered by a part of the bag, what each is worth of it stands under what it is. */
function sayWorth(row: HTMLTableRowElement, order: PegOrder, month: Month): void {
  const place = row.querySelector('td.words');
  const bag = order.startsWith('worth-') ? order.slice('worth-'.length) : 'total';
  const known = bag === 'total' ? null : (worthsOf(row)[bag]?.[month - 1] ?? null);
  let line = place?.querySelector<HTMLElement>('[data-part-worth]') ?? null;
  if (known === null) {
    line?.remove();
    return;
  }
  if (line === null) {
    line = document.createElement('small');
    line.dataset.partWorth = '';
    place?.append(line);
  }
  line.textContent = `${bag}: ${known[0].toFixed(2)} ${known[1] ?? ''}`;
}

/** The month the table shows: the one chosen, or today's where every month is. */
function monthShown(choice: HTMLSelectElement | null): Month {
  const chosen = Number(choice?.value);
  return chosen >= 1 && chosen <= 12 ? (chosen as Month) : monthOf(localDay(new Date()));
}

/** Takes order and features out of the address; what it asks for that there is not is told beside the choice. */
function readAddress(order: HTMLSelectElement, wanted: readonly HTMLInputElement[]): string[] {
  const asked = new URLSearchParams(location.search);
  const faults: string[] = [];
  const by = asked.get('order');
  if (by !== null && [...order.options].some(({ value }) => value === by)) order.value = by;
  else if (by !== null) faults.push(`The address asks for the order “${by.slice(0, 20)}”, which there is not.`);
  for (const feature of asked.getAll('with').slice(0, 20)) {
    const box = wanted.find(({ value }) => value === feature);
    if (box === undefined) faults.push(`No peg here has the feature “${feature.slice(0, 20)}”.`);
    else box.checked = true;
  }
  const folded = wanted[0]?.closest('details');
  if (folded && wanted.some(({ checked }) => checked)) folded.open = true;
  return faults;
}

function writeAddress(order: HTMLSelectElement, wanted: readonly HTMLInputElement[]): void {
  const url = new URL(location.href);
  url.searchParams.delete('with');
  for (const { checked, value } of wanted) if (checked) url.searchParams.append('with', value);
  if (order.value === 'number') url.searchParams.delete('order');
  else url.searchParams.set('order', order.value);
  history.replaceState(history.state, '', url);
}

/** Gives every row a box that keeps its peg, and shows the way to the kept ones. */
function keepSome(form: HTMLFormElement, rows: readonly HTMLTableRowElement[]): void {
  const place = { base: document.body.dataset.guideBase ?? '/', water: form.dataset.pegChoice ?? '' };
  const link = document.querySelector<HTMLAnchorElement>('[data-compare-link]')!;
  const said = form.querySelector<HTMLElement>('[data-kept]')!;
  said.id = 'kept-said';
  said.setAttribute('role', 'status');
  const store = phoneStore();
  let kept = keptPegs(
    '',
    store,
    place,
    rows.map(({ dataset }) => dataset.peg ?? ''),
  ).pegs;
  const showKept = () => {
    link.href = addressWithPegs(link.href, kept);
    link.textContent = kept.length === 0 ? 'Pegs side by side' : `Side by side: ${kept.join(', ')}`;
  };
  for (const row of rows) {
    const peg = row.dataset.peg ?? '';
    const box = document.createElement('input');
    Object.assign(box, { type: 'checkbox', name: 'keep', checked: kept.includes(peg) });
    box.setAttribute('aria-describedby', said.id);
    const label = document.createElement('label');
    label.className = 'keep-peg screen-only';
    label.append(box, ' compare');
    box.setAttribute('aria-label', `Compare peg ${peg}`);
    box.addEventListener('change', () => {
      const next = withPeg(kept, peg, box.checked);
      kept = next.pegs;
      box.checked = kept.includes(peg);
      const isKept = keepPegs(store, place, kept);
      said.textContent =
        sayAll(next.said) || (isKept ? '' : 'This phone keeps nothing: the link below holds the pegs instead.');
      showKept();
    });
    row.querySelector('td.words')?.append(label);
  }
  showKept();
}
