import type { Day } from '../domain/day.ts';
import { floatSettings } from '../domain/float-settings.ts';
import { formatLength, parseSignedLength, shortDepth } from '../domain/length.ts';
import { fieldForm } from './field-form.ts';
import { localDay } from './local-day.ts';
import { storeName, type TextStore } from './text-store.ts';

/** A level read off the board by the reader: of one water and one day. */
export interface BoardReading {
  readonly metres: number;
  readonly day: Day;
}

/** A water of the guide that stands below a base, with a slash at each end. */
export interface GuideWater {
  readonly base: string;
  readonly id: string;
}

/** Farther from the datum than this no stillwater stands: a slip of the thumb. */
const FARTHEST_METRES = 10;

/** The reading of a water, while it is of that day. What cannot be read as one is passed over. */
export function readBoard(store: TextStore, water: GuideWater, day: Day): BoardReading | null {
  try {
    const kept = JSON.parse(store.getItem(nameOf(water)) ?? 'null') as Partial<BoardReading> | null;
    return kept !== null &&
      typeof kept.metres === 'number' &&
      Math.abs(kept.metres) <= FARTHEST_METRES &&
      kept.day === day
      ? { metres: kept.metres, day }
      : null;
  } catch {
    return null;
  }
}

/** Keeps the reading of a water for its day; null forgets it. */
export function keepBoard(store: TextStore, water: GuideWater, reading: BoardReading | null): void {
  if (reading === null) store.removeItem(nameOf(water));
  else store.setItem(nameOf(water), JSON.stringify(reading));
}

/** Lets the reader enter what the gauge board shows; every depth of the sheet then is that of the reading, for the day. */
export function startGaugeBoard(guide: HTMLElement, desk: Element, units: { readonly length: 'm' | 'ft' }): void {
  const water = {
    base: document.body.dataset.guideBase ?? '/',
    id: (guide.dataset.plumbGuide ?? '').split('/')[0] ?? '',
  };
  const { form, input, refuse } = fieldForm({
    className: 'gauge-board',
    heading: 'The gauge board today',
    label: `Reads, ${units.length === 'm' ? 'm' : 'ft and in'} (minus below zero)`,
    example: units.length === 'm' ? '-0.14' : '-6 in',
    button: 'Use',
    note: 'Zero of the board is the datum. Kept for today on this phone; every depth here then is that of the reading.',
  });
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    if (input.value.trim() === '') {
      keepBoard(localStorage, water, null);
      location.reload();
      return;
    }
    const level = parseSignedLength(input.value, units.length);
    if (!level.ok) return refuse(`Expected ${level.expected}, with a minus below zero. ${level.mend}`);
    if (Math.abs(level.value) > FARTHEST_METRES) return refuse('Expected a level within 10 m of the datum.');
    refuse('');
    const reading = { metres: level.value, day: localDay(new Date()) };
    keepBoard(localStorage, water, reading);
    showReading(guide, reading, units);
  });
  desk.append(form);
  const kept = readBoard(localStorage, water, localDay(new Date()));
  if (kept === null) return;
  input.value = kept.metres.toFixed(2);
  showReading(guide, kept, units);
}

function showReading(guide: HTMLElement, { metres }: BoardReading, units: { readonly length: 'm' | 'ft' }): void {
  const other = { length: units.length === 'm' ? ('ft' as const) : ('m' as const) };
  for (const row of guide.querySelectorAll<HTMLElement>('tr[data-datum]')) {
    const depth = Math.max(0, Number(row.dataset.datum) + metres);
    const { lightMetres, heavyMetres } = floatSettings(depth);
    const [dead, over] = row.querySelectorAll('td');
    const strip = document.querySelector(`[data-strip-line="${row.dataset.line}"]`);
    for (const place of [dead, strip]) {
      const small = document.createElement('small');
      small.textContent = formatLength(depth, other);
      const bold = document.createElement('b');
      bold.textContent = shortDepth(heavyMetres, units);
      place?.setAttribute('data-own', '');
      place?.replaceChildren(bold, ' ', small);
    }
    if (over) over.textContent = shortDepth(lightMetres, units);
    over?.setAttribute('data-own', '');
  }
  for (const surface of document.querySelectorAll<SVGElement>('[data-surface]')) {
    const [drawnMetres, unitsPerMetre] = (surface.dataset.surface ?? '').split(' ').map(Number);
    surface.setAttribute('transform', `translate(0 ${((drawnMetres ?? 0) - metres) * (unitsPerMetre ?? 0)})`);
  }
  for (const head of document.querySelectorAll('[data-level-day]')) head.textContent = 'by your reading';
}

function nameOf({ base, id }: GuideWater): string {
  return storeName(base, `gauge-board/${id}`);
}
