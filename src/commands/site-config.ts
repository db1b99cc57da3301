import type { AstroInlineConfig } from 'astro';
import type { SiteAddress } from '../domain/site-address.ts';
import { SHARED_SCRIPTS } from './shared-scripts.ts';
import { thirdPartyNotices } from './third-party-notices.ts';

/** While the disk writes one page, the next is put together. */
const PAGES_AT_ONCE = 4;

/** How Astro builds a guide; where the program lies and where the guide goes is the builder's affair. */
export function siteConfig({ site, base }: SiteAddress) {
  return {
    ...(site === undefined ? {} : { site }),
    base,
    output: 'static',
    trailingSlash: 'always',
    compressHTML: true,
    build: { format: 'directory', inlineStylesheets: 'always', concurrency: PAGES_AT_ONCE },
    devToolbar: { enabled: false },
    // The highlighter's inline styles would break the content security policy; the guide shows no code.
    markdown: { syntaxHighlight: false },
    security: {
      csp: {
        algorithm: 'SHA-256',
        // A club may ship its own map image, and a photo on its way from the bailiff's phone is a blob. Nothing else is let in.
        directives: [
          "default-src 'self'",
          "img-src 'self' data: blob:",
          "object-src 'none'",
          // Nothing is framed and no other site is asked for anything. What would lead a reader away (a refresh tag) no policy
          // forbids: words from the folder are text everywhere instead.
          "frame-src 'none'",
          "connect-src 'self'",
          "worker-src 'self'",
          "media-src 'none'",
          "base-uri 'none'",
          "form-action 'self'",
        ],
      },
    },
    vite: {
      build: { assetsInlineLimit: 0 },
      environments: { client: { build: { rolldownOptions: { output: { codeSplitting: SHARED_SCRIPTS } } } } },
      plugins: [thirdPartyNotices()],
    },
  } satisfies AstroInlineConfig;
}
