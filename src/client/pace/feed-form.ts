import { type Fed, MAX_FED_TEXT, plain } from '../../domain/fed.ts';
import { MAX_FED } from '../../match-day/slip.ts';
import { button, make } from '../match-day/make.ts';
import { clockTime } from '../round/elements.ts';
import { minuteOf } from './outing.ts';
import type { PaceContext } from './pace-view.ts';

/** So many feeds have a key of their own, the latest first. */
const KEYS = 4;

/** What is fed, as it goes in: typed once, and then a key for each feed that was typed. */
export function feedForm(context: PaceContext): HTMLElement {
  const { outing, change } = context;
  const fed = outing.fed ?? [];
  const why = make('p', { className: 'why', role: 'alert', id: 'fed-why' });
  const input = make('input', {
    name: 'fed',
    autocomplete: 'off',
    placeholder: 'hemp, 13 m',
    maxLength: MAX_FED_TEXT,
    enterKeyHint: 'done',
  });
  input.setAttribute('aria-describedby', why.id);
  const add = (typed: string) => {
    const what = plain(typed);
    const minute = minuteOf(outing, new Date());
    const fault =
      minute === null
        ? 'Set the all in first: a feed without its time tells little.'
        : what === ''
          ? 'Say what you fed.'
          : fed.length >= MAX_FED
            ? `${MAX_FED} feeds are noted: that is as many as a slip takes.`
            : '';
    why.textContent = fault;
    input.setAttribute('aria-invalid', String(fault !== ''));
    if (fault === '') change({ ...outing, fed: [...fed, { minute: Math.round(minute!), what }] });
  };
  const form = make(
    'form',
    { className: 'net-form', noValidate: true },
    make('label', { className: 'key' }, input, 'what you feed'),
    make('button', { type: 'submit', className: 'wide-button' }, 'Fed now'),
    why,
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    add(input.value);
  });
  const known = [...new Set(fed.map(({ what }) => what).reverse())].slice(0, KEYS);
  const last = fed.at(-1);
  return make(
    'details',
    { className: 'fed' },
    make('summary', {}, fed.length === 0 ? 'What you feed' : `What you feed: ${fed.length} noted`),
    ...known.map((what) => button(`+ ${what}`, () => add(what), true)),
    form,
    ...(last === undefined
      ? []
      : [
          make('ol', { className: 'nets' }, ...fed.map((each) => make('li', {}, fedWords(context, each)))),
          button(`Undo: ${fedWords(context, last)}`, () => change({ ...outing, fed: fed.slice(0, -1) })),
        ]),
  );
}

/** "hemp, 13 m at 10:05". */
function fedWords({ outing }: PaceContext, { minute, what }: Fed): string {
  const at = outing.start === null ? '' : ` at ${clockTime(new Date(Date.parse(outing.start) + minute * 60_000))}`;
  return `${what}${at}`;
}
