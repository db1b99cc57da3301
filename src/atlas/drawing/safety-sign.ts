import { SAFE_CONDITION_SYMBOLS } from './safe-condition-symbols.ts';
import type { SignSymbol } from './sign-symbol.ts';
import { escapeMarkup } from './svg-markup.ts';
import { WARNING_SYMBOLS } from './warning-symbols.ts';

/**
 * Colours of ISO 3864-1: signal yellow with black for warnings, signal green with white for safe conditions. The standard
 * fixes them as surface colours (DIN EN ISO 7010 cites RAL 1003 and 9004; RAL 6032 is quoted from memory); these are
 * their usual approximations on a screen, and stay the same in the dark and on paper.
 */
const YELLOW = '#fac800';
const BLACK = '#141414';
const GREEN = '#237f52';
const WHITE = '#fff';

/** What a sign of ISO 7010 is registered to mean, in the register's words (open index of its names). */
export const SIGN_MEANINGS: Readonly<Record<string, string>> = {
  W001: 'General warning',
  W007: 'Floor-level obstacle',
  W008: 'Drop (fall)',
  W009: 'Biological hazard',
  W010: 'Low temperature',
  W011: 'Slippery surface',
  W012: 'Electricity',
  W020: 'Overhead obstacle',
  W033: 'Barbed wire',
  W034: 'Bull',
  W035: 'Falling objects',
  W043: 'Thin ice',
  W047: 'Deep water',
  W049: 'Submerged objects',
  W051: 'Unprotected edge',
  W052: 'Unstable cliff edge',
  E003: 'First aid',
  E004: 'Emergency telephone',
  E010: 'Automated external heart defibrillator',
  E040: 'Lifebuoy',
  E041: 'Lifebuoy with line',
};

/**
 * A safety sign drawn by us in the shapes of ISO 7010 and the colours of ISO 3864-1: black on a yellow triangle with a
 * black edge to warn, white on a green square for a safe condition. Colours are attributes of the shapes, because a
 * safety colour is no part of the site's look. `label` names it where no words stand beside it; else it is hidden.
 * @throws RangeError for a code without a drawing
 */
export function safetySign(code: string, label?: string): string {
  const meaning = label === undefined ? 'aria-hidden="true"' : `role="img" aria-label="${escapeMarkup(label)}"`;
  const warning = WARNING_SYMBOLS[code];
  if (warning !== undefined) {
    const triangle = `<path fill="${YELLOW}" stroke="${BLACK}" stroke-width="6" stroke-linejoin="round" d="M50,6L96,85H4z"/>`;
    return `<svg class="sign" viewBox="0 0 100 90" ${meaning}>${triangle}${symbol(warning, BLACK)}</svg>`;
  }
  const safe = SAFE_CONDITION_SYMBOLS[code];
  if (safe !== undefined) {
    const square = `<path fill="${GREEN}" d="M0,0H90V90H0z"/>`;
    return `<svg class="sign" viewBox="0 0 90 90" ${meaning}>${square}${symbol(safe, WHITE)}</svg>`;
  }
  throw new RangeError(`safetySign has no drawing for "${code}"; it draws ${Object.keys(SIGN_MEANINGS).join(', ')}`);
}

function symbol({ fill, strokes = [], dots = [] }: SignSymbol, colour: string): string {
  const filled = fill === undefined ? '' : `<path fill="${colour}" d="${fill}"/>`;
  const lines = strokes.map(
    ([width, d]) =>
      `<path fill="none" stroke="${colour}" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round" d="${d}"/>`,
  );
  const heads = dots.map(([x, y, r]) => `<circle fill="${colour}" cx="${x}" cy="${y}" r="${r}"/>`);
  return filled + lines.join('') + heads.join('');
}
