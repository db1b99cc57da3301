import type { Caught } from '../../match-day/pace.ts';
import { button, make } from '../make.ts';
import { say } from '../page-words.ts';
import { atTime } from './at-time.ts';
import { minuteOf } from './outing.ts';
import type { PaceContext } from './pace-view.ts';
import { weight } from './pace-words.ts';
import { readWeight, weightFields } from './weight-fields.ts';

/** A fish or a netful of one part heavier than this is asked about once more: 60 lb. */
const HEAVY_GRAMS = 27_216;

/** What is caught, part by part, as it comes; the last can be undone, and each taken out. */
export function catchForm(context: PaceContext): HTMLElement {
  const { data, outing, change } = context;
  const fields = weightFields(data.weightUnit, null);
  const why = make('p', { className: 'why', role: 'alert', id: 'catch-why' });
  let sure: number | null = null;
  const add = (part: string) => {
    const minute = minuteOf(outing, new Date());
    if (minute === null) {
      why.textContent = say('pace.caughtBeforeAllIn');
      return;
    }
    const grams = readWeight(fields, data.weightUnit, why);
    if (grams === null) return;
    if (grams > HEAVY_GRAMS && sure !== grams) {
      sure = grams;
      why.textContent = say('pace.atOneGo', { weight: weight(grams, data) });
      return;
    }
    change({ ...outing, caught: [...outing.caught, { minute: Math.round(minute), part, grams }] });
  };
  const last = outing.caught.at(-1);
  return make(
    'section',
    { ariaLabel: say('pace.caught') },
    make(
      'form',
      { className: 'net-form', noValidate: true },
      ...fields.labels,
      ...data.parts.map(({ id, name }) => {
        const key = button(`+ ${name}`, () => add(id), true);
        key.dataset.part = id;
        return key;
      }),
      why,
    ),
    ...(last === undefined
      ? []
      : [
          button(say('pace.undo', { what: wordsOf(context, last) }), () =>
            change({ ...outing, caught: outing.caught.slice(0, -1) }),
          ),
          make(
            'details',
            { className: 'caught' },
            make('summary', {}, say('pace.allNoted', { count: outing.caught.length })),
            make('ol', { className: 'nets' }, ...outing.caught.map((each, i) => caughtRow(context, each, i))),
          ),
        ]),
  );
}

function caughtRow(context: PaceContext, each: Caught, index: number): HTMLElement {
  const { outing, change } = context;
  return make(
    'li',
    {},
    make('span', {}, wordsOf(context, each)),
    button(say('pace.takeOut'), () => change({ ...outing, caught: outing.caught.filter((_, i) => i !== index) })),
  );
}

/** "Carp 3 lb 2 oz at 11:42". */
function wordsOf({ data, outing }: PaceContext, { part, grams, minute }: Caught): string {
  const name = data.parts.find(({ id }) => id === part)?.name ?? part;
  return atTime(`${name} ${weight(grams, data)}`, outing, minute);
}
