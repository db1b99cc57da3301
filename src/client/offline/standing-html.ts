import type { StandingLine } from './standing.ts';

/** What every page of a guide holds where its verdict stands, for the worker and the page's own script to fill. */
const STANDING_PLACE = '<div data-standing></div>';

/** The page with what must be said of it in the verdict's own place. */
export function withStanding(html: string, lines: readonly StandingLine[]): string {
  if (lines.length === 0) return html;
  const told = `<div data-standing class="standing">${lines.map(lineHtml).join('')}</div>`;
  // A function: a dollar sign in a club's words is no pattern.
  return html.includes(STANDING_PLACE)
    ? html.replace(STANDING_PLACE, () => told)
    : html.replace(/<body[^>]*>/, (body) => body + told);
}

/** The page that is shown in place of one that belongs to the guide and is not on the phone yet. */
export function withoutPage(html: string): string {
  const words =
    '<h1>This page is not on this phone yet</h1><p>Open it where there is a signal: it is kept from then on.</p>';
  return html.replace(/<h1[\s\S]*?(?=<\/main>)/, words).replace(/<title>[^<]*/, '<title>Not on this phone yet');
}

function lineHtml({ kind, strong, words }: StandingLine): string {
  return `<p data-standing-kind="${kind}"><strong>${escaped(strong)}.</strong> ${escaped(words)}</p>`;
}

function escaped(text: string): string {
  const names: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
  return text.replace(/[&<>"]/g, (character) => names[character] ?? character);
}

/** What a page says of itself in its body's tag: which guide it belongs to, its day. Null where it is no page of a guide. */
export function pageMarks(html: string): { readonly base: string; readonly day: string } | null {
  const body = /<body[^>]*>/.exec(html)?.[0] ?? '';
  const base = /data-guide-base="([^"]*)"/.exec(body)?.[1];
  const day = /data-guide-day="([^"]*)"/.exec(body)?.[1];
  return base === undefined || day === undefined ? null : { base, day };
}
