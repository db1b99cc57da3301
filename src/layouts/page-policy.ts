import { createHash } from 'node:crypto';

const STYLE = /<style[^>]*>([\s\S]*?)<\/style>/g;
const SCRIPT_HASHES = /(script-src 'self')((?: 'sha256-[^']*')+)/;
const STYLE_HASHES = /(style-src 'self')((?: 'sha256-[^']*')+)/;

/**
 * The page with a content security policy of its own. Astro lists the hashes of every style and script of the whole
 * site in each page: a kilobyte that no zip makes smaller. Here a page allows the styles it holds; and since it holds no
 * script, only files of the guide, `'self'` is all that its scripts need.
 */
export function withPagePolicy(html: string): string {
  const held = new Set([...html.matchAll(STYLE)].map(([, css = '']) => `'sha256-${sha256(css)}'`));
  return html.replace(SCRIPT_HASHES, '$1').replace(STYLE_HASHES, (_all, self: string, hashes: string) => {
    const kept = hashes.split(' ').filter((hash) => held.has(hash));
    return [self, ...kept].join(' ');
  });
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}
