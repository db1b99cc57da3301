import { formatDay } from '../domain/day.ts';
import { floatSettings } from '../domain/float-settings.ts';
import { formatLength } from '../domain/length.ts';
import { readPlumbed } from '../domain/plumb-doubt.ts';
import { fieldForm } from './field-form.ts';
import { startGaugeBoard } from './gauge-board.ts';
import { localDay } from './local-day.ts';
import { chooser, make } from './make.ts';
import { forgetOwnDepth, keepOwnDepth, type OwnDepth, readOwnDepths } from './own-depths.ts';
import { chosenUnits, unitsOfPage } from './units/chosen-units.ts';

/**
 * The plumb guide: the person types the depth they plumbed at a line; it is saved on the phone and shown in the table
 * under that line, with the float settings for it. The table is whole without this script, so the forms are made here.
 */

/** Draws the forms into the desk of a depth table, and shows what was saved before. */
export function startPlumbGuide(guide: HTMLElement): void {
  const desk = guide.querySelector('[data-desk]');
  const key = guide.dataset.plumbGuide;
  if (desk === null || key === undefined || !isStoreOpen()) return;
  const peg = { base: document.body.dataset.guideBase ?? '/', key };
  const units = unitsOfPage(chosenUnits(location.search, localStorage, peg.base));
  const rows = [...guide.querySelectorAll<HTMLElement>('tr[data-line]')];
  const lines = chooser(
    rows.map((row) => [row.dataset.line ?? '', row.querySelector('[data-line-name]')?.textContent ?? ''] as const),
  );
  const show = () => showOwnDepths(guide, readOwnDepths(localStorage, peg), units, forget);
  const forget = (line: string) => {
    forgetOwnDepth(localStorage, peg, line);
    show();
    lines.focus();
  };
  const { form, input, refuse } = fieldForm({
    className: 'own-depth-form',
    heading: 'Your own depth',
    before: [['Line', lines]],
    label: `Depth, ${units.length === 'm' ? 'm' : 'ft and in'}`,
    example: units.length === 'm' ? '2.05' : '6 ft 9 in',
    button: 'Save',
    note: 'Saved on this phone only; shown above at its line, with the float setting for light baits.',
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const depth = readPlumbed(input.value, units.length);
    if (!depth.ok) return refuse(depth.why);
    refuse('');
    keepOwnDepth(localStorage, peg, { line: lines.value, metres: depth.metres, day: localDay(new Date()) });
    input.value = '';
    show();
  });
  desk.append(form);
  show();
  startGaugeBoard(guide, desk, units);
}

/** Some browsers refuse the store in private windows: then there is nothing to offer. */
function isStoreOpen(): boolean {
  try {
    localStorage.getItem('peg-atlas');
    return true;
  } catch {
    return false;
  }
}

function showOwnDepths(
  guide: HTMLElement,
  depths: readonly OwnDepth[],
  units: { readonly length: 'm' | 'ft' },
  forget: (line: string) => void,
): void {
  for (const row of guide.querySelectorAll('tr.own')) row.remove();
  const columns = guide.querySelectorAll('thead th').length;
  for (const own of depths) {
    const row = guide.querySelector(`tr[data-line="${CSS.escape(own.line)}"]`);
    row?.after(ownRow(own, row.querySelector('[data-line-name]')?.textContent ?? own.line, columns, units, forget));
  }
}

function ownRow(
  own: OwnDepth,
  lineName: string,
  columns: number,
  units: { readonly length: 'm' | 'ft' },
  forget: (line: string) => void,
): HTMLTableRowElement {
  const { lightMetres, heavyMetres } = floatSettings(own.metres);
  const forgets = make('button', { type: 'button' }, 'Forget');
  forgets.setAttribute('aria-label', `Forget your depth at ${lineName}`);
  forgets.addEventListener('click', () => forget(own.line));
  const row = make(
    'tr',
    { className: 'own' },
    make('th', { scope: 'row' }, 'yours ', make('small', {}, formatDay(own.day)), forgets),
    make('td', { className: 'middle' }, formatLength(heavyMetres, units)),
    make('td', {}, formatLength(lightMetres, units)),
  );
  row.setAttribute('data-own', '');
  // The datum's column has nothing of the person's own.
  if (columns > 3) row.append(make('td'));
  return row;
}
