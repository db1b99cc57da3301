import { make } from '../make.ts';
import { say } from '../page-words.ts';
import type { Target } from './outing.ts';
import type { PaceContext } from './pace-view.ts';
import { readWeight, weightFields } from './weight-fields.ts';

/** What to aim at: the weight to frame, to win, or one's own. */
export function targetForm({ data, outing, change }: PaceContext): HTMLElement {
  const own = outing.target.kind === 'own' ? outing.target.grams : null;
  const fields = weightFields(data.weightUnit, own);
  const why = make('p', { className: 'why', role: 'alert', id: 'target-why' });
  const ownForm = make(
    'form',
    { className: 'net-form', noValidate: true, hidden: outing.target.kind !== 'own' },
    ...fields.labels,
    make('button', { type: 'submit', className: 'wide-button' }, say('pace.aimAtThis')),
    why,
  );
  ownForm.addEventListener('submit', (event) => {
    event.preventDefault();
    const read = readWeight(fields, data.weightUnit, why);
    if (read !== null) change({ ...outing, target: { kind: 'own', grams: read } });
  });
  const choices = (['frame', 'win', 'own'] as const).map((kind) => {
    const names = { frame: say('pace.toFrame'), win: say('pace.toWin'), own: say('pace.ownWeight') };
    const input = make('input', { type: 'radio', name: 'target', value: kind, checked: outing.target.kind === kind });
    input.addEventListener('change', () => {
      ownForm.hidden = kind !== 'own';
      if (kind === 'own') fields.inputs[0]!.focus();
      else change({ ...outing, target: { kind } satisfies Target });
    });
    return make('label', { className: 'aim' }, input, names[kind]);
  });
  return make('fieldset', { className: 'aims' }, make('legend', {}, say('pace.aimHeading')), ...choices, ownForm);
}
