import { globSync, readFileSync } from 'node:fs';
import { expect, inject, test } from 'vitest';
import { missedIn } from '../words/corrections.ts';

/** The words of a page, tags, scripts and styles taken out: what stands in an attribute is read by somebody as well. */
function wordsOf(html: string): string {
  const told = [...html.matchAll(/(?:title|aria-label|alt|content|placeholder)="([^"]*)"/g)].map(([, words]) => words);
  const text = html
    .replace(/<(script|style)[\s\S]*?<\/\1>/g, ' ')
    .replace(/<\/(?:p|li|t[hdr]|h\d|d[td]|summary|section|div)>/g, '\n');
  return [text.replace(/<[^>]+>/g, ''), ...told].join('\n').replace(/[^\S\n]+/g, ' ');
}

test('every page of the built guide says it as it was corrected', () => {
  const folder = inject('siteFolder');
  const pages = globSync('**/*.html', { cwd: folder });
  expect(pages.length).toBeGreaterThan(120);
  expect(pages.flatMap((page) => missedIn(wordsOf(readFileSync(`${folder}/${page}`, 'utf8')), page))).toEqual([]);
});
