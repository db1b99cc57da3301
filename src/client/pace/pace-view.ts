import type { DrawData } from '../../atlas/draw-page.ts';
import { capitalised } from '../../domain/capitalised.ts';
import { type Month, monthOf } from '../../domain/day.ts';
import { lengthsInOther } from '../../domain/unit-words.ts';
import { nearestMoment, paceOf } from '../../match-day/pace.ts';
import { localDay } from '../local-day.ts';
import { button, make } from '../make.ts';
import { ENGLISH, say } from '../page-words.ts';
import { readDays } from '../read-days.ts';
import { clockTime } from '../round/elements.ts';
import { unitsOfReader } from '../units/chosen-units.ts';
import { bagByHour } from './bag-by-hour.ts';
import { catchForm } from './catch-form.ts';
import { feedForm } from './feed-form.ts';
import { MAX_HOURS, minuteOf, type Outing } from './outing.ts';
import { paceLines, targetGrams, targetWords, weight } from './pace-words.ts';
import { slipView } from './slip-view.ts';
import { targetForm } from './target-form.ts';

/** What the page of a drawn peg is made from. */
export interface PaceContext {
  readonly data: DrawData;
  /** The peg's line in the page: its link, and whether it is closed today. */
  readonly row: HTMLElement;
  readonly list: HTMLElement;
  readonly outing: Outing;
  readonly now: Date;
  readonly isKept: boolean;
  /** Keeps what was noted and draws anew; null begins afresh. */
  readonly change: (next: Outing | null) => void;
  /** Keeps what was noted and leaves the page as it is: somebody is typing. */
  readonly keep: (next: Outing) => void;
}

/** The month of the match: that of its all in, else of the day the reader chose, else today's. */
function monthOfOuting({ start }: Outing, now: Date): Month {
  return monthOf(start === null ? (readDays()[1] ?? localDay(now)) : localDay(new Date(start)));
}

/** The drawn peg: how it stands, its neighbours, the bag by the hour, and the pace. */
export function paceView(context: PaceContext): HTMLElement {
  const { data, row, outing, isKept } = context;
  const isClosed = row.classList.contains('shut') || row.querySelector('.closed-now') !== null;
  return make(
    'div',
    {},
    pegHead(context),
    neighbours(context),
    ...(isClosed
      ? [
          make(
            'p',
            { className: 'notice', lang: ENGLISH },
            'Do not fish it, whatever was drawn: ask the organiser for another peg.',
          ),
        ]
      : [
          ...(isKept ? [] : [make('p', { className: 'notice', role: 'alert' }, say('pace.keepsNothing'))]),
          bagByHour(data, outing, monthOfOuting(outing, context.now)),
          make('h2', { id: 'pace' }, say('pace.heading')),
          timesForm(context),
          targetForm(context),
          paceStatus(data, outing, context.now),
          catchForm(context),
          feedForm(context),
          slipView(context),
        ]),
  );
}

function pegHead({ data, row, outing }: PaceContext): HTMLElement {
  const link = row.querySelector('a')!;
  const limits = data.pegs[outing.peg]?.limits ?? [];
  const closed = [...row.querySelectorAll<HTMLElement>('.closed-words:not([hidden]), .closed-word')];
  return make(
    'div',
    {},
    make('h2', { className: 'drawn-head' }, say('pace.peg', { peg: outing.peg })),
    ...(closed.length === 0 ? [] : [make('p', { lang: ENGLISH }, make('b', {}, closed[0]!.textContent.trim()))]),
    ...(limits.length === 0
      ? []
      : [make('p', { lang: ENGLISH }, make('b', {}, `Fished within a limit: ${limits.join(', ')}.`))]),
    make('p', {}, make('a', { href: link.href, className: 'wide-button' }, say('pace.itsSheet'))),
  );
}

/** Who may sit beside: the next pegs along the bank, closed ones named as such, and whether the match has them in. */
function neighbours({ data, row, list, outing }: PaceContext): HTMLElement {
  const { length, own } = unitsOfReader();
  const match = data.matches.find(({ id }) => id === outing.match);
  const beside = (row.querySelector<HTMLElement>('[data-beside]')?.dataset.beside ?? '')
    .split(';')
    .filter((text) => text !== '')
    .map((text, index): readonly (string | HTMLElement)[] => {
      const [side = '', peg = '', gap = ''] = text.split('|');
      const other = [...list.querySelectorAll<HTMLElement>('[data-peg]')].find(({ dataset }) => dataset.peg === peg);
      const isShut = other?.classList.contains('shut') === true || other?.querySelector('.closed-now') != null;
      const told = say(side === 'left' ? 'pace.onYourLeft' : 'pace.onYourRight', {
        peg,
        gap: length === own.length ? gap : lengthsInOther(gap, own.length),
      });
      const begun = index === 0 ? capitalised(told) : `; ${told}`;
      if (isShut) return [begun, make('span', { lang: ENGLISH }, ', closed')];
      return match === undefined
        ? [begun]
        : [begun, say(match.pegs.includes(peg) ? 'pace.inMatch' : 'pace.notInMatch')];
    });
  return make('p', { className: 'soft' }, ...beside.flat(), beside.length === 0 ? '' : '.');
}

/** What the clock and the bag say; drawn anew as time goes on. */
export function paceStatus(data: DrawData, outing: Outing, now: Date): HTMLElement {
  const month = monthOfOuting(outing, now);
  const minute = minuteOf(outing, now);
  const aim = targetGrams(outing.target, data, month);
  const status = make('div', { className: 'pace-status', role: 'status' });
  status.dataset.paceStatus = '';
  const caught = outing.caught.reduce((sum, { grams }) => sum + grams, 0);
  const byPart = data.parts
    .map(({ id, name }) => [name, sumOf(outing, id)] as const)
    .filter(([, grams]) => grams > 0)
    .map(([name, grams]) => `${name.toLowerCase()} ${weight(grams, data)}`);
  status.append(
    make('p', { className: 'pace-bag' }, make('b', {}, caught === 0 ? say('pace.nothingYet') : weight(caught, data))),
    make('p', { className: 'soft' }, byPart.join(', ')),
    make('p', {}, say('pace.aim', { target: targetWords(outing.target, data, month, say) }).replace(/\.?$/, '.')),
  );
  if (minute === null) {
    status.append(make('p', {}, say('pace.sayAllIn')));
    return status;
  }
  const pace = paceOf(outing.caught, minute, outing.hours * 60, aim, data.hours[month]);
  status.append(...paceLines(pace, aim, data, month, say).map((line) => make('p', {}, line)));
  return status;
}

function sumOf({ caught }: Outing, part: string): number {
  return caught.filter((each) => each.part === part).reduce((sum, { grams }) => sum + grams, 0);
}

/** All in and hours. A start before midnight is told as yesterday's. */
function timesForm({ data, outing, now, change }: PaceContext): HTMLElement {
  const known = data.matches.find(({ id }) => id === outing.match)?.allIn ?? '';
  const time = make('input', {
    type: 'time',
    name: 'all-in',
    value: outing.start === null ? known : clockTime(new Date(outing.start)),
  });
  const hours = make('input', {
    inputMode: 'decimal',
    name: 'hours',
    value: String(outing.hours),
    autocomplete: 'off',
  });
  const why = make('p', { className: 'why', role: 'alert', id: 'times-why' });
  for (const input of [time, hours]) input.setAttribute('aria-describedby', why.id);
  const form = make(
    'form',
    { className: 'times-form', noValidate: true },
    make('label', { className: 'key' }, time, say('pace.allIn')),
    make('label', { className: 'key' }, hours, say('pace.hours')),
    make(
      'button',
      { type: 'submit', className: 'wide-button' },
      say(outing.start === null ? 'pace.set' : 'pace.change'),
    ),
    why,
  );
  if (outing.start !== null && localDay(new Date(outing.start)) !== localDay(now)) {
    form.append(make('p', { className: 'soft' }, say('pace.allInWas', { day: localDay(new Date(outing.start)) })));
  }
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const start = nearestMoment(time.value, new Date());
    const length = Number(hours.value.trim().replace(',', '.'));
    const isLength = length >= 0.5 && length <= MAX_HOURS;
    why.textContent =
      start === null ? say('pace.timeSuchAs') : isLength ? '' : say('pace.hoursFrom', { most: MAX_HOURS });
    time.setAttribute('aria-invalid', String(start === null));
    hours.setAttribute('aria-invalid', String(!isLength));
    if (start !== null && isLength) change({ ...outing, start: start.toISOString(), hours: length });
  });
  const isOld = outing.start !== null && now.getTime() - Date.parse(outing.start) > 20 * 3_600_000;
  if (isOld) form.append(button(say('pace.newMatch'), () => change(null)));
  return form;
}
