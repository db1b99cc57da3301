import { MAX_SLIP_TEXT } from '../../match-day/slip.ts';
import { slipFileText } from '../../match-day/slip-file.ts';
import { button, make } from '../make.ts';
import { say } from '../page-words.ts';
import { canShare, downloadFile, shareFile } from '../round/hand-over.ts';
import { depthForm, ownDepthsOf } from './depth-form.ts';
import type { PaceContext } from './pace-view.ts';
import { slipCode } from './slip-code.ts';
import { type SlipField, slipOf } from './slip-of.ts';

/** The fields with their labels and an example each. */
const fieldsOf = (): readonly (readonly [Exclude<SlipField, 'start'>, string, string])[] => [
  ['spot', say('pace.spot'), say('pace.spotLike')],
  ['method', say('pace.method'), say('pace.methodLike')],
  ['bait', say('pace.bait'), say('pace.baitLike')],
  ['lines', say('pace.linesFed'), '2'],
  ['waterDegreesC', say('pace.waterTemperature'), '7.5'],
];

const HANDED_OVER = { cancelled: 'pace.notHandedOver', shared: 'pace.wasShared', saved: 'pace.wasSaved' } as const;

/** The slip for the club: what was done and caught, as a file that holds no name. Handed over by hand, never sent by itself. */
export function slipView(context: PaceContext): HTMLElement {
  const { data, outing, change } = context;
  const said = make('p', { className: 'why', role: 'alert', id: 'slip-said' });
  const shown = make('div', { className: 'slip-code' });
  const plumbed = depthForm(context);
  const named = fieldsOf();
  const fields = named.map(([name, label, example]) => {
    const isNumber = name === 'lines' || name === 'waterDegreesC';
    const input = make('input', {
      name,
      value: outing[name],
      placeholder: example,
      autocomplete: 'off',
      maxLength: MAX_SLIP_TEXT,
      inputMode: isNumber ? 'decimal' : 'text',
    });
    input.setAttribute('aria-describedby', said.id);
    return { name, input, label: make('label', { className: 'key' }, input, label) };
  });
  const typed = () => ({ ...outing, ...Object.fromEntries(fields.map(({ name, input }) => [name, input.value])) });
  // Kept as soon as a field is left, and not drawn anew under the next one.
  for (const { input } of fields)
    input.addEventListener('change', () => {
      shown.replaceChildren();
      context.keep(typed());
    });
  const hand = async () => {
    shown.replaceChildren();
    const made = slipOf(typed(), data, ownDepthsOf(context), say);
    for (const { name, input } of fields) input.setAttribute('aria-invalid', String(!made.ok && name in made.faults));
    if (!made.ok) {
      said.textContent = Object.entries(made.faults)
        .map(([name, fault]) => {
          const label = named.find(([field]) => field === name)?.[1];
          return label === undefined ? fault : `${label}: ${fault}`;
        })
        .join(' ');
      return;
    }
    const text = await slipFileText(made.slip);
    showCode(shown, text);
    const file = new File([text], `slip-${data.water}-${outing.peg}-${made.slip.day}.txt`, { type: 'text/plain' });
    const how = canShare(file) ? await shareFile(file) : downloadFile(file);
    said.textContent = say(HANDED_OVER[how], { file: file.name });
  };
  return make(
    'details',
    { className: 'slip' },
    make('summary', {}, say('pace.slip')),
    make('p', {}, say('pace.slipHolds')),
    make('div', { className: 'slip-fields' }, ...fields.map(({ label }) => label)),
    ...(plumbed === null ? [] : [plumbed]),
    button(say('pace.makeSlip'), () => void hand(), true),
    said,
    shown,
    button(say('pace.done'), () => {
      if (confirm(say('pace.forget'))) change(null);
    }),
  );
}

/** The same file as a code for whoever stands beside the phone, or that it takes the file. */
function showCode(place: HTMLElement, text: string): void {
  const rows = slipCode(text);
  place.append(make('p', {}, say(rows === null ? 'pace.codeTooSmall' : 'pace.orCode')));
  if (rows !== null) place.append(codePicture(rows));
}

/** Light modules that a reader needs on every side (ISO/IEC 18004: four), and dots a module, so that its edges stay sharp. */
const QUIET = 4;
const DOTS = 6;

/** Always dark on white, also where the page is dark. */
function codePicture(rows: readonly (readonly boolean[])[]): HTMLCanvasElement {
  const side = (rows.length + 2 * QUIET) * DOTS;
  const canvas = make('canvas', { width: side, height: side });
  canvas.setAttribute('role', 'img');
  canvas.setAttribute('aria-label', say('pace.codeName'));
  const ink = canvas.getContext('2d');
  if (ink === null) return canvas;
  ink.fillStyle = '#fff';
  ink.fillRect(0, 0, side, side);
  ink.fillStyle = '#000';
  rows.forEach((row, y) => {
    row.forEach((isDark, x) => {
      if (isDark) ink.fillRect((x + QUIET) * DOTS, (y + QUIET) * DOTS, DOTS, DOTS);
    });
  });
  return canvas;
}
