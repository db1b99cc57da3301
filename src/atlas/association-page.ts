import { createHash } from 'node:crypto';
import { countWords } from '../domain/count-words.ts';
import { formatDay } from '../domain/day.ts';
import type { Venue } from '../domain/venue.ts';
import { escapeMarkup } from './drawing/svg-markup.ts';
import { markdownHtml } from './markdown-html.ts';

/** One guide of an association, as its first page names it. */
export interface GuideEntry {
  /** The last step of its address. */
  readonly id: string;
  readonly venue: Pick<Venue, 'settings' | 'waters' | 'pegs'>;
}

interface AssociationPage {
  readonly name: string;
  readonly markdown: string;
  readonly base: string;
  readonly guides: readonly GuideEntry[];
  /** The style sheet of every guide, written into the page. */
  readonly css: string;
}

/**
 * The first page of an association: its guides by name. It says of no peg whether it is open, since a guide may be newer than
 * this page: what is closed is said by each guide alone.
 */
export function associationPage({ name, markdown, base, guides, css }: AssociationPage): string {
  const rows = guides.map(({ id, venue: { settings, waters, pegs } }) => {
    const own = settings.club === name ? '' : `${escapeMarkup(settings.club)}. `;
    const invented = settings.invented ? ' Invented: a demonstration.' : '';
    return `<li><h2><a href="${base}${id}/">${escapeMarkup(settings.name)}</a></h2>
<p>${own}${waters.map((water) => escapeMarkup(water.name)).join(', ')}: ${countWords(pegs.length, 'peg')}.${invented}</p>
<p class="soft">Data to <time datetime="${settings.guideDay}">${formatDay(settings.guideDay)}</time>. In an emergency ${escapeMarkup(settings.emergency.number)}.</p></li>`;
  });
  return page({
    title: name,
    base,
    css,
    main: `<h1>${escapeMarkup(name)}</h1>
${markdown === '' ? '' : markdownHtml(markdown, 2)}
<ul class="plain">
${rows.join('\n')}
</ul>
<p>What is closed today, what to keep away from and who to call stand in each guide. Open the guide of your venue once with a signal: it
then works on the bank without one. What is on the ground on the day counts for more than any page.</p>`,
  });
}

/** The page for addresses that lead to no guide. */
export function associationNotFound({ name, base, css }: Pick<AssociationPage, 'name' | 'base' | 'css'>): string {
  return page({
    title: 'No such page',
    base,
    css,
    main: `<h1>No such page</h1>
<p>This address leads to no guide. All guides of ${escapeMarkup(name)} are on the <a href="${base}">first page</a>.</p>`,
  });
}

function page({ title, base, css, main }: { title: string; base: string; css: string; main: string }): string {
  const style = `${css}\n.plain { list-style: none; padding: 0; }`;
  const hash = createHash('sha256').update(style).digest('base64');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="content-security-policy" content="default-src 'none'; style-src 'sha256-${hash}'; base-uri 'none'; form-action 'none'">
<title>${escapeMarkup(title)}</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<style>${style}</style>
</head>
<body data-guide-base="${base}">
<main id="main">
${main}
</main>
</body>
</html>
`;
}
