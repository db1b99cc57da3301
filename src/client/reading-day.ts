import { type Day, formatDay, type Month, monthOf } from '../domain/day.ts';
import { noticeStateOn } from '../domain/notice-state.ts';
import { ageWords, overdueWords } from '../domain/reading-words.ts';
import { addressWithDay, dayFaultOfAddress } from './chosen-day.ts';
import { addressWithMonth, type ChosenMonth, chosenMonth, keepMonth, monthFault } from './chosen-month.ts';
import { localDay } from './local-day.ts';
import { phoneStore } from './phone-store.ts';
import { readDays } from './read-days.ts';
import { addressWithUnits, differing, unitsFault, unitsOfReader } from './units/chosen-units.ts';
import { showVerdicts } from './verdict-of-day.ts';

/**
 * A phone may carry an old copy of a page, so what depends on the day is worked out on the day it is read:
 * - `body[data-guide-day]` and `[data-age]`: how old the guide is;
 * - `[data-due]`: a check due on that day, marked once the day is past (`data-past`: in other words than out of date);
 * - `[data-notice]` with `data-from`, `data-until`, `data-replaced-from`: whether the notice is live; inside
 *   `[data-notices]` it moves to the `[data-notice-group]` of its state where there is one;
 * - `[data-verdict]`: whether the peg is closed (verdict-of-day.ts), today or on the day to come that the reader chose;
 * - `[data-month]`: the present month carries the class `now`; the choice `select[name=month]` shows it, or the month the reader
 *   chose on this page, on another before it or by the address; a
 *   group `[data-month-list]` puts the blocks that name the present month (`data-months`) first.
 * Whoever orders pegs hears of it by the event `pegs-marked`. The units a reader chose are shown too.
 */

let today = localDay(new Date());
const guideDay: Day = document.body.dataset.guideDay ?? today;
/** A phone that slept over midnight wakes with the page of yesterday. */
const LOOKED_AGAIN_MILLISECONDS = 60_000;

const base = document.body.dataset.guideBase ?? '/';
const choice = document.querySelector<HTMLSelectElement>('select[name="month"]');

showToday();
sayDay();
document.addEventListener('day-chosen', () => {
  showToday();
  sayDay();
});
followChoice();
followUnits();
document.addEventListener('visibilitychange', showNewDay);
addEventListener('pageshow', showNewDay);
setInterval(showNewDay, LOOKED_AGAIN_MILLISECONDS);

function showNewDay(): void {
  const day = localDay(new Date());
  if (day === today) return;
  today = day;
  showToday();
}

function showToday(): void {
  showAge();
  markOverdue();
  placeNotices();
  showVerdicts(readDays());
  showMonth(chosen() ?? monthOf(presentDay()));
  document.dispatchEvent(new Event('pegs-marked'));
}

/** The day whose month is the present one: the one the reader chose, else today. */
function presentDay(): Day {
  return readDays()[1] ?? today;
}

/** Says at the head of the page for which other day it is shown, and keeps that day in the address. */
function sayDay(): void {
  const [, day] = readDays();
  const fault = dayFaultOfAddress(location.search, today);
  document.querySelector('#for-day')?.remove();
  if (day !== undefined || fault !== null) {
    const said = document.createElement('b');
    said.id = 'for-day';
    said.setAttribute('role', 'status');
    const change = document.createElement('a');
    change.href = '#units';
    change.textContent = day === undefined ? 'choose a day' : 'change the day';
    const words = day === undefined ? `${fault} Shown for today` : `Shown for ${formatDay(day)}`;
    said.append(`${words}: `, change);
    document.querySelector('.mast p')?.append(said);
  }
  if (day !== undefined) history.replaceState(history.state, '', addressWithDay(location.href, day));
}

function showAge(): void {
  for (const element of document.querySelectorAll<HTMLElement>('[data-age]')) {
    element.textContent = ageWords(guideDay, today, element.dataset.age ?? '');
  }
}

function markOverdue(): void {
  for (const element of document.querySelectorAll<HTMLElement>('[data-due]')) {
    const words = overdueWords(element.dataset.due ?? today, today, element.dataset.past);
    element.classList.toggle('late', words !== '');
    let said = element.querySelector('[data-overdue]');
    if (said === null && words !== '') {
      said = document.createElement('span');
      said.setAttribute('data-overdue', '');
      element.append(said);
    }
    if (said !== null) said.textContent = words;
  }
}

function placeNotices(): void {
  const groups = new Set<Element>();
  for (const notice of document.querySelectorAll<HTMLElement>('[data-notice]')) {
    const state = noticeStateToday(notice);
    notice.dataset.state = state;
    const list = notice.closest('[data-notices]');
    const home = notice.closest('[data-notice-group]');
    const group = list?.querySelector(`[data-notice-group="${state}"]`);
    for (const touched of [home, group]) if (touched) groups.add(touched);
    if (group) {
      if (group !== home) group.append(notice);
    } else if (state === 'past') {
      sayEnded(notice);
    }
  }
  for (const group of groups) {
    const none = group.querySelector<HTMLElement>('.none');
    if (none !== null) none.hidden = group.querySelector('[data-notice]') !== null;
  }
}

/** What was replaced stands among the past; what is live today or on the day chosen is live. */
function noticeStateToday({ dataset }: HTMLElement): 'live' | 'upcoming' | 'past' {
  const { from = today, until, replacedFrom } = dataset;
  const states = [today, presentDay()].map((day) => noticeStateOn({ from, until, replacedFrom }, day));
  const state = states.includes('live') ? 'live' : states[0]!;
  return state === 'replaced' ? 'past' : state;
}

/** A live notice of an old copy that is over by now stays readable, and says so first. */
function sayEnded(notice: HTMLElement): void {
  if (notice.querySelector('[data-ended]') !== null) return;
  const { until, replacedFrom } = notice.dataset;
  const ended = document.createElement('strong');
  ended.setAttribute('data-ended', '');
  ended.textContent =
    until !== undefined && until < today
      ? `Over since ${formatDay(until)}. `
      : `No longer holds since ${formatDay(replacedFrom ?? today)}. `;
  (notice.querySelector('summary h3, p') ?? notice).prepend(ended);
}

/** The month the reader chose, where the page has that choice. */
function chosen(): ChosenMonth | null {
  return choice === null ? null : chosenMonth(location.search, phoneStore(), base);
}

/** Keeps what the reader chooses, for every page and in the address; the present month is no choice, so that it moves on. */
function followChoice(): void {
  if (choice === null) return;
  const fault = monthFault(location.search);
  if (fault !== null) sayBeside(choice, fault);
  // A month held from another page is in the address of this one too, so that what is shared shows what was seen.
  const held = chosen();
  if (held !== null) history.replaceState(history.state, '', addressWithMonth(location.href, held));
  choice.addEventListener('change', () => {
    const value = choice.value === 'all' ? 'all' : (Number(choice.value) as Month);
    const kept = value === monthOf(presentDay()) ? null : value;
    if (!keepMonth(phoneStore(), base, kept)) {
      sayBeside(
        choice,
        'This phone keeps nothing for the guide (a private window, or full): the address alone holds the month.',
      );
    }
    history.replaceState(history.state, '', addressWithMonth(location.href, kept));
    showMonth(value);
  });
}

function sayBeside(control: HTMLElement, words: string): void {
  const said = document.querySelector('#month-fault') ?? document.createElement('small');
  said.id = 'month-fault';
  said.setAttribute('role', 'alert');
  said.textContent = words;
  control.setAttribute('aria-describedby', said.id);
  control.after(said);
}

/** Figures are told anew where the reader chose other units; the choice itself is fetched as its place comes near. */
async function followUnits(): Promise<void> {
  const shown = unitsOfReader();
  const place = document.querySelector<HTMLElement>('#units');
  if (place !== null) {
    const watch = new IntersectionObserver(async (seen) => {
      if (!seen.some(({ isIntersecting }) => isIntersecting)) return;
      watch.disconnect();
      (await import('./units/units-form.ts')).offerUnits(place, shown.own, shown);
    });
    watch.observe(place);
  }
  const isOther = shown.weight !== shown.own.weight || shown.length !== shown.own.length;
  if (!isOther) return;
  if (unitsFault(location.search) === null) {
    history.replaceState(history.state, '', addressWithUnits(location.href, differing(shown)));
  }
  (await import('./units/show-units.ts')).showUnits(shown.own, shown);
}

function showMonth(chosenNow: ChosenMonth): void {
  const month = chosenNow === 'all' ? monthOf(presentDay()) : chosenNow;
  for (const element of document.querySelectorAll<HTMLElement | SVGElement>('[data-month]')) {
    element.classList.toggle('now', Number(element.dataset.month) === month);
  }
  if (choice !== null) choice.value = String(chosenNow);
  for (const list of document.querySelectorAll('[data-month-list]')) {
    const named = [...list.querySelectorAll<HTMLElement>(':scope > [data-months]')];
    const isNow = (block: HTMLElement) => (block.dataset.months ?? '').split(' ').includes(String(month));
    const ordered = [...named.filter(isNow), ...named.filter((block) => !isNow(block))];
    if (ordered.some((block, index) => block !== named[index])) list.append(...ordered);
    for (const block of named) block.classList.toggle('now', isNow(block));
  }
}
