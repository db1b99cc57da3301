import type { DrawData } from '../../atlas/draw-page.ts';
import { addDays } from '../../domain/day.ts';
import { readPegOfWater } from '../../domain/typed-peg.ts';
import { localDay } from '../local-day.ts';
import { say } from '../page-words.ts';
import { phoneStore } from '../phone-store.ts';
import { requireElement } from '../round/elements.ts';
import { addressWith } from '../shared-address.ts';
import { keepText, storeName } from '../text-store.ts';
import { unitsOfReader } from '../units/chosen-units.ts';
import { forgetOuting, keepOuting, newOuting, type Outing, type OutingPlace, readOuting, slipWords } from './outing.ts';
import { paceStatus, paceView } from './pace-view.ts';

/** The page for who has drawn: the peg by what is typed or by the address, then its bag by the hour and the pace. */
const { weight: weightUnit } = unitsOfReader();
/** With weights in the reader's unit: told and typed in it. */
const data: DrawData = { ...(JSON.parse(requireElement('#draw-data').textContent) as DrawData), weightUnit };
const base = document.body.dataset.guideBase ?? '/';
const form = requireElement('[data-draw]') as HTMLFormElement;
const field = form.querySelector('input')!;
const said = requireElement('#drawn-said');
const list = requireElement('[data-drawn-pegs]');
const view = requireElement('#drawn');
const store = phoneStore();
const LOOKED_AGAIN_MILLISECONDS = 30_000;

/** The peg shown and what is noted of it: kept here too, since a phone may refuse to keep it. */
let shown: { readonly row: HTMLElement; readonly outing: Outing; readonly isKept: boolean } | null = null;

form.hidden = false;
form.addEventListener('submit', (event) => {
  event.preventDefault();
  open(field.value);
});
const asked = new URLSearchParams(location.search).get('peg') ?? lastPeg();
if (asked !== null) open(asked);
else list.hidden = true;
document.addEventListener('pegs-marked', draw);
document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && drawStatus());
setInterval(drawStatus, LOOKED_AGAIN_MILLISECONDS);

function open(typed: string): void {
  const { peg, fault } = readPegOfWater(typed, data.name, Object.keys(data.pegs));
  said.textContent = fault === null ? '' : say(fault.key, fault.values);
  if (peg === null) {
    field.setAttribute('aria-invalid', 'true');
    if (shown === null) list.hidden = false;
    return;
  }
  field.removeAttribute('aria-invalid');
  show(peg);
}

function show(peg: string): void {
  field.value = peg;
  const row = [...list.querySelectorAll<HTMLElement>('[data-peg]')].find(({ dataset }) => dataset.peg === peg)!;
  const match = data.matches.find(({ day, pegs }) => isNow(day) && pegs.includes(peg)) ?? null;
  const outing = readOuting(store, placeOf(peg)) ?? newOuting(peg, match?.id ?? null, match?.hours ?? null);
  shown = { row, outing, isKept: keepDrawn(peg) };
  history.replaceState(history.state, '', addressWith(location.href, { peg }));
  draw();
}

function placeOf(peg: string): OutingPlace {
  return { base, water: data.water, peg };
}

/** A match of today, or one of yesterday that goes on past midnight. */
function isNow(day: string): boolean {
  const today = localDay(new Date());
  return day === today || day === addDays(today, -1);
}

function keepDrawn(peg: string): boolean {
  return keepText(store, drawnName(), peg);
}

function drawnName(): string {
  return storeName(base, `drawn/${data.water}`);
}

/** The peg drawn here last, so that the page opened again after a flat battery shows it at once. */
function lastPeg(): string | null {
  const peg = store?.getItem(drawnName()) ?? null;
  const outing = peg === null ? null : readOuting(store, placeOf(peg));
  if (outing?.start == null) return null;
  const isOver = Date.now() > Date.parse(outing.start) + (outing.hours + 24) * 3_600_000;
  return isOver ? null : peg;
}

function draw(): void {
  if (shown === null) return;
  const { row, outing, isKept } = shown;
  list.hidden = true;
  view.hidden = false;
  const change = (next: Outing | null) => {
    const place = placeOf(outing.peg);
    if (next === null) forgetOuting(store, place);
    // The words of the slip may have been kept since the forms were drawn.
    const fresh =
      next === null
        ? newOuting(outing.peg, outing.match, outing.hours)
        : { ...next, ...slipWords(shown?.outing ?? next) };
    shown = { row, outing: fresh, isKept: next === null ? isKept : keepOuting(store, place, fresh) };
    draw();
  };
  const keep = (next: Outing) => {
    shown = { row, outing: next, isKept: keepOuting(store, placeOf(next.peg), next) };
  };
  // What was folded out stays so: the next fish comes while somebody writes the slip.
  const open = new Set([...view.querySelectorAll('details[open]')].map(({ className }) => className));
  view.replaceChildren(paceView({ data, row, list, outing, now: new Date(), isKept, change, keep }));
  for (const details of view.querySelectorAll('details')) details.open = open.has(details.className);
}

/** The clock goes on while forms are filled in: only what it says is drawn anew. */
function drawStatus(): void {
  const status = view.querySelector('[data-pace-status]');
  if (shown !== null && status !== null) status.replaceWith(paceStatus(data, shown.outing, new Date()));
}
