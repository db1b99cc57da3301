import { make } from '../make.ts';
import type { MatchDay } from './match-day.ts';

/** A field whose text outlasts a restart: kept with every key until it is noted. @param field its name in this match */
export function keptInput(day: MatchDay, field: string, properties: Partial<HTMLInputElement> = {}): HTMLInputElement {
  const input = make('input', { autocomplete: 'off', ...properties });
  input.classList.add('large');
  input.dataset.field = field;
  const typed = day.typedIn(field);
  if (typed !== undefined) input.value = typed;
  input.addEventListener('input', () => void day.type(field, input.value));
  return input;
}

/** Draws anew and goes back to the field or button that was in use: a phone's keyboard stays open, a reader's place is kept. */
export function drawnInPlace(draw: () => void): void {
  const before = document.activeElement instanceof HTMLElement ? document.activeElement : null;
  const field = before?.dataset.field;
  const [x, y] = [scrollX, scrollY];
  const caret = before instanceof HTMLInputElement ? before.selectionStart : null;
  draw();
  scrollTo(x, y);
  if (field === undefined) return;
  const now = document.querySelector<HTMLElement>(`[data-field="${CSS.escape(field)}"]`);
  now?.focus({ preventScroll: true });
  if (now instanceof HTMLInputElement && caret !== null) now.setSelectionRange(caret, caret);
}
