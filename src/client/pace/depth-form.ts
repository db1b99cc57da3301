import type { DrawLine } from '../../atlas/draw-page.ts';
import { formatLength } from '../../domain/length.ts';
import { isFarFromSurvey, readPlumbed } from '../../domain/plumb-doubt.ts';
import { localDay } from '../local-day.ts';
import { button, make } from '../make.ts';
import { forgetOwnDepth, keepOwnDepth, type OwnDepth, readOwnDepths } from '../own-depths.ts';
import { ENGLISH, say } from '../page-words.ts';
import { phoneStore } from '../phone-store.ts';
import { unitsOfReader } from '../units/chosen-units.ts';
import type { PaceContext } from './pace-view.ts';

/** What the angler plumbed at this peg, kept where the peg's sheet keeps it too. */
export function ownDepthsOf({ data, outing }: PaceContext): readonly OwnDepth[] {
  const store = phoneStore();
  return store === null ? [] : readOwnDepths(store, placeOf(data.pegs[outing.peg]?.placeKey ?? ''));
}

/** Depths plumbed today, line by line: they go into the slip. Nothing where the phone keeps nothing or no line lies on water. */
export function depthForm(context: PaceContext): HTMLElement | null {
  const store = phoneStore();
  const { placeKey = '', lines = [] } = context.data.pegs[context.outing.peg] ?? {};
  if (store === null || lines.length === 0) return null;
  const { length } = unitsOfReader();
  const place = placeOf(placeKey);
  const why = make('p', { className: 'why', role: 'alert', id: 'plumbed-why' });
  const list = make('ol', { className: 'nets' });
  const select = make('select', { name: 'line' }, ...lines.map(({ id, name }) => new Option(name, id)));
  const input = make('input', {
    name: 'plumbed',
    autocomplete: 'off',
    placeholder: length === 'm' ? '2.05' : '6 ft 9 in',
    maxLength: 20,
  });
  input.setAttribute('aria-describedby', why.id);
  let sure = '';
  const show = () => {
    const today = ownDepthsOf(context).filter(({ day }) => day === localDay(context.now));
    list.replaceChildren(
      ...today.flatMap((own) => {
        const line = lines.find(({ id }) => id === own.line);
        if (line === undefined) return [];
        const remove = button(say('pace.remove'), () => {
          forgetOwnDepth(store, place, own.line);
          show();
          select.focus();
        });
        const words = `${line.name}: ${formatLength(own.metres, { length })}`;
        remove.setAttribute('aria-label', say('pace.removeDepth', { depth: words }));
        return [make('li', {}, make('span', {}, words), remove)];
      }),
    );
  };
  const form = make(
    'form',
    { className: 'net-form plumbed-form', noValidate: true },
    make('label', { className: 'key' }, select, say('pace.line')),
    make('label', { className: 'key' }, input, say(length === 'm' ? 'pace.depthMetres' : 'pace.depthFeet')),
    make('button', { type: 'submit', className: 'wide-button' }, say('pace.saveDepth')),
    why,
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const line = lines.find(({ id }) => id === select.value)!;
    const {
      metres,
      fault,
      lang = document.documentElement.lang,
    } = readDepth(input.value, line, length, sure === `${line.id} ${input.value}`);
    Object.assign(why, { textContent: fault, lang });
    input.setAttribute('aria-invalid', String(fault !== ''));
    if (metres === null) {
      sure = `${line.id} ${input.value}`;
      input.focus();
      return;
    }
    try {
      keepOwnDepth(store, place, { line: line.id, metres, day: localDay(new Date()) });
    } catch {
      why.textContent = say('pace.phoneFull');
      return;
    }
    input.value = '';
    show();
  });
  show();
  return make(
    'section',
    { ariaLabel: say('pace.plumbed') },
    make('h3', {}, say('pace.plumbedToday')),
    form,
    list,
    make('p', { className: 'soft' }, say('pace.whereShown')),
  );
}

/** The depth typed; null with the reason, also where the survey has another and nobody has said yet that it is right. */
function readDepth(
  typed: string,
  { name, depth, off }: DrawLine,
  length: 'm' | 'ft',
  isSure: boolean,
): { readonly metres: number | null; readonly fault: string; readonly lang?: string } {
  const read = readPlumbed(typed, length);
  // As the sheet says it, which is English as yet.
  if (!read.ok) return { metres: null, fault: read.why, lang: ENGLISH };
  const { metres } = read;
  if (depth === null || isSure || !isFarFromSurvey(metres, depth, off)) return { metres, fault: '' };
  const own = formatLength(metres, { length });
  const surveyed = formatLength(depth, { length });
  return {
    metres: null,
    fault: say('pace.farFromSurvey', { own, line: name, surveyed }),
  };
}

function placeOf(key: string) {
  return { base: document.body.dataset.guideBase ?? '/', key };
}
