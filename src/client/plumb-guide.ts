import { formatDay } from '../domain/day.ts';
import { floatSettings } from '../domain/float-settings.ts';
import { formatLength, parseLength } from '../domain/length.ts';
import { localDay } from './local-day.ts';
import { forgetOwnDepth, keepOwnDepth, type OwnDepth, readOwnDepths } from './own-depths.ts';

/**
 * The plumb guide: the person types the depth they plumbed at a line; it is kept on the phone and shown in the table
 * under that line, with the float settings for it. The table is whole without this script.
 */

/** Deeper than any stillwater peg: a slip of the thumb. */
const DEEPEST_METRES = 30;

for (const guide of document.querySelectorAll<HTMLElement>('[data-plumb-guide]')) startPlumbGuide(guide);

function startPlumbGuide(guide: HTMLElement): void {
  const form = guide.querySelector('form');
  const fault = guide.querySelector('[role="alert"]');
  const key = guide.dataset.plumbGuide;
  if (form === null || fault === null || key === undefined || !isStoreOpen()) return;
  const peg = { base: document.body.dataset.guideBase ?? '/', key };
  const units = { length: guide.dataset.unit === 'ft' ? ('ft' as const) : ('m' as const) };
  const show = () => showOwnDepths(guide, readOwnDepths(localStorage, peg), units, forget);
  const forget = (line: string) => {
    forgetOwnDepth(localStorage, peg, line);
    show();
    form.querySelector('select')?.focus();
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const fields = new FormData(form);
    const depth = parseLength(String(fields.get('depth') ?? ''), units.length);
    if (!depth.ok || depth.value <= 0 || depth.value > DEEPEST_METRES) {
      fault.textContent = depth.ok
        ? 'Expected a depth between 0 and 30 m.'
        : `Expected ${depth.expected}. ${depth.mend}`;
      form.querySelector('input')?.focus();
      return;
    }
    fault.textContent = '';
    keepOwnDepth(localStorage, peg, {
      line: String(fields.get('line')),
      metres: depth.value,
      day: localDay(new Date()),
    });
    form.querySelector('input')!.value = '';
    show();
  });
  form.hidden = false;
  show();
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
  const row = document.createElement('tr');
  row.className = 'own';
  const head = document.createElement('th');
  head.scope = 'row';
  head.textContent = 'yours ';
  const when = document.createElement('small');
  when.textContent = formatDay(own.day);
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = 'Forget';
  button.setAttribute('aria-label', `Forget your depth at ${lineName}`);
  button.addEventListener('click', () => forget(own.line));
  head.append(when, button);
  const depth = document.createElement('td');
  depth.className = 'middle';
  // One cell stands for the datum's and the day's depth: it is the depth of the day it was plumbed.
  depth.colSpan = columns - 2;
  depth.textContent = formatLength(heavyMetres, units);
  row.append(head, depth, cell(formatLength(lightMetres, units)));
  return row;
}

function cell(words: string): HTMLTableCellElement {
  const made = document.createElement('td');
  made.textContent = words;
  return made;
}
