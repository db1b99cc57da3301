import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HtmlValidate } from 'html-validate';
import { LinkChecker } from 'linkinator';
import { describe, expect, inject, it } from 'vitest';
import { PAGE_KINDS } from './page-kinds.ts';

const htmlFile = (address: string) => {
  const path = address.replace(/\?.*$/, '');
  return join(inject('siteFolder'), path.endsWith('.html') ? path : join(path, 'index.html'));
};

describe('the built guide', () => {
  it('has no dead link and no dead fragment', async () => {
    const result = await new LinkChecker().check({
      path: inject('siteUrl'),
      recurse: true,
      checkFragments: true,
      linksToSkip: ['^https://', '^tel:', '^mailto:'],
      concurrency: 20,
    });
    const dead = result.links.filter((link) => link.state === 'BROKEN').map((link) => `${link.url} on ${link.parent}`);
    expect(dead).toEqual([]);
    expect(result.links.length).toBeGreaterThan(100);
  });

  it.each(Object.entries(PAGE_KINDS))('is valid HTML: %s', async (_kind, path) => {
    const validator = new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: {
        // Astro writes void elements and character references its own way; both are valid HTML.
        'void-style': 'off',
        'no-trailing-whitespace': 'off',
        'attribute-boolean-style': 'off',
        'attribute-empty-style': 'off',
        'no-raw-characters': 'off',
        'long-title': 'off',
      },
    });
    const report = await validator.validateString(readFileSync(htmlFile(path), 'utf8'), htmlFile(path));
    const messages = report.results.flatMap((result) =>
      result.messages.map((message) => `${message.line}:${message.column} ${message.ruleId}: ${message.message}`),
    );
    expect(messages).toEqual([]);
  });

  it('has no script inside a page, no style attribute and no handler attribute', () => {
    for (const path of Object.values(PAGE_KINDS)) {
      const html = readFileSync(htmlFile(path), 'utf8');
      // A block of JSON is data: no browser runs it.
      expect(html).not.toMatch(/<script(?![^>]*\b(?:src=|type="application\/json"))[^>]*>(?!\s*<\/script>)/);
      expect(html).not.toMatch(/<[^>]+\sstyle=/);
      expect(html).not.toMatch(/<[^>]+\son[a-z]+=/);
      expect(html).toMatch(/http-equiv="content-security-policy"[^>]*default-src 'self'[^>]*object-src 'none'/);
      expect(html).not.toContain('unsafe-inline');
    }
  });

  it('names no machine and no angler reference', () => {
    const files = readdirSync(inject('siteFolder'), { recursive: true, encoding: 'utf8' });
    for (const file of files.filter(
      (name) => /\.(html|json|geojson|xml|js)$/.test(name) && !name.startsWith('schema'),
    )) {
      const text = readFileSync(join(inject('siteFolder'), file), 'utf8');
      expect(text, file).not.toContain(process.cwd());
      expect(text, file).not.toContain('"angler"');
    }
  });
});
