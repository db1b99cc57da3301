import type { Units } from '../../domain/bag.ts';
import type { Day } from '../../domain/day.ts';
import { addressWithDay, dayFault, dayFaultOfAddress, keepDay } from '../chosen-day.ts';
import { chooser, labelled, make } from '../make.ts';
import { phoneStore } from '../phone-store.ts';
import { readDays } from '../read-days.ts';
import { addressWithUnits, differing, keepUnits, unitsFault } from './chosen-units.ts';

const REFUSED =
  'This phone keeps nothing for the guide (a private window, or full): the choice holds in this page’s address alone.';
const READ_MILLISECONDS = 4000;

/** Puts the choice of day and units into its place at the foot of the page; a change holds on every page and is in the address. */
export function offerUnits(place: HTMLElement, own: Units, shown: Units): void {
  const base = document.body.dataset.guideBase ?? '/';
  const weight = choice(
    'Weights in',
    [
      ['lb', 'lb and oz'],
      ['kg', 'kg'],
    ],
    shown.weight,
  );
  const length = choice(
    'Depths in',
    [
      ['m', 'm'],
      ['ft', 'ft and in'],
    ],
    shown.length,
  );
  const said = make('small', { id: 'units-said' });
  said.setAttribute('role', 'status');
  const say = (words: string) => {
    said.textContent = words;
  };
  const change = () => {
    const chosen = differing({
      weight: weight.select.value === 'kg' ? 'kg' : 'lb',
      length: length.select.value === 'ft' ? 'ft' : 'm',
      own,
    });
    history.replaceState(history.state, '', addressWithUnits(location.href, chosen));
    const isKept = keepUnits(phoneStore(), base, chosen);
    if (!isKept) say(REFUSED);
    // Left long enough on the screen to be read; the address then carries the choice over.
    setTimeout(() => location.reload(), isKept ? 0 : READ_MILLISECONDS);
  };
  for (const { select } of [weight, length]) {
    select.setAttribute('aria-describedby', said.id);
    select.addEventListener('change', change);
  }
  const day = dayChoice(said.id, say);
  place.replaceChildren(day, ' ', weight.label, ' ', length.label, ' ', said);
  say([dayFaultOfAddress(location.search, readDays()[0]), unitsFault(location.search)].filter(Boolean).join(' '));
}

/** The day the guide is read for: today, or one to come. */
function dayChoice(saidId: string, say: (words: string) => void): HTMLLabelElement {
  const [today, chosen] = readDays();
  const input = make('input', { type: 'date', value: chosen ?? today });
  input.setAttribute('aria-describedby', saidId);
  input.addEventListener('change', () => {
    // An emptied field, like today's date, is no choice: the guide then moves on with the days.
    const day = input.value === '' || input.value === today ? null : input.value;
    const fault = day === null ? null : dayFault(day, today);
    input.setAttribute('aria-invalid', String(fault !== null));
    if (fault !== null) return say(fault);
    say(chooseDay(day) ? '' : REFUSED);
    if (day === null) input.value = today;
  });
  return labelled('For the day', input);
}

/** Keeps a day and shows the page for it. Whether the phone keeps it. */
export function chooseDay(day: Day | null): boolean {
  const isKept = keepDay(phoneStore(), document.body.dataset.guideBase ?? '/', day);
  history.replaceState(history.state, '', addressWithDay(location.href, day));
  document.dispatchEvent(new Event('day-chosen'));
  return isKept;
}

function choice(words: string, options: readonly (readonly [string, string])[], value: string) {
  const select = chooser(options, value);
  return { label: labelled(words, select), select };
}
