import { type Fed, MAX_FED_TEXT, plain } from '../../domain/fed.ts';
import { MAX_FED } from '../../match-day/slip.ts';
import { button, make } from '../make.ts';
import { say } from '../page-words.ts';
import { atTime } from './at-time.ts';
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
    placeholder: say('pace.feedLike'),
    maxLength: MAX_FED_TEXT,
    enterKeyHint: 'done',
  });
  input.setAttribute('aria-describedby', why.id);
  const add = (typed: string) => {
    const what = plain(typed);
    const minute = minuteOf(outing, new Date());
    const fault =
      minute === null
        ? say('pace.fedBeforeAllIn')
        : what === ''
          ? say('pace.sayWhatFed')
          : fed.length >= MAX_FED
            ? say('pace.fedFull', { most: MAX_FED })
            : '';
    why.textContent = fault;
    input.setAttribute('aria-invalid', String(fault !== ''));
    if (fault === '') change({ ...outing, fed: [...fed, { minute: Math.round(minute!), what }] });
  };
  const form = make(
    'form',
    { className: 'net-form', noValidate: true },
    make('label', { className: 'key' }, input, say('pace.whatYouFeed')),
    make('button', { type: 'submit', className: 'wide-button' }, say('pace.fedNow')),
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
    make('summary', {}, fed.length === 0 ? say('pace.feeds') : say('pace.feedsNoted', { count: fed.length })),
    ...known.map((what) => button(`+ ${what}`, () => add(what), true)),
    form,
    ...(last === undefined
      ? []
      : [
          make('ol', { className: 'nets' }, ...fed.map((each) => make('li', {}, fedWords(context, each)))),
          button(say('pace.undo', { what: fedWords(context, last) }), () =>
            change({ ...outing, fed: fed.slice(0, -1) }),
          ),
        ]),
  );
}

/** "hemp, 13 m at 10:05". */
function fedWords({ outing }: PaceContext, { minute, what }: Fed): string {
  return atTime(what, outing, minute);
}
