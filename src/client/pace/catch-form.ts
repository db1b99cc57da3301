import type { Caught } from '../../match-day/pace.ts';
import { button, make } from '../match-day/make.ts';
import { clockTime } from '../round/elements.ts';
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
      why.textContent = 'Set the all in first: a weight without its time tells no pace.';
      return;
    }
    const grams = readWeight(fields, data.weightUnit, why);
    if (grams === null) return;
    if (grams > HEAVY_GRAMS && sure !== grams) {
      sure = grams;
      why.textContent = `${weight(grams, data)} at one go? If it is right, press the key once more.`;
      return;
    }
    change({ ...outing, caught: [...outing.caught, { minute: Math.round(minute), part, grams }] });
  };
  const last = outing.caught.at(-1);
  return make(
    'section',
    { ariaLabel: 'What is caught' },
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
          button(`Undo: ${wordsOf(context, last)}`, () => change({ ...outing, caught: outing.caught.slice(0, -1) })),
          make(
            'details',
            { className: 'caught' },
            make('summary', {}, `All ${outing.caught.length} noted`),
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
    button('Take out', () => change({ ...outing, caught: outing.caught.filter((_, i) => i !== index) })),
  );
}

/** "Carp 3 lb 2 oz at 11:42". */
function wordsOf({ data, outing }: PaceContext, { part, grams, minute }: Caught): string {
  const name = data.parts.find(({ id }) => id === part)?.name ?? part;
  const at = outing.start === null ? '' : ` at ${clockTime(new Date(Date.parse(outing.start) + minute * 60_000))}`;
  return `${name} ${weight(grams, data)}${at}`;
}
