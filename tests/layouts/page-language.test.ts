import { expect, it } from 'vitest';
import { pageLanguage } from '../../src/layouts/page-language.ts';

it('lets an angler’s pages speak the venue’s language, and the club’s own pages English', () => {
  expect(pageLanguage('cy', '/[water]/[peg]')).toMatchObject({ tag: 'cy', reviewed: false, englishPart: 'en-GB' });
  for (const route of ['/search/', '/compare/[water]', '/draw/[water]', '/paper/booklet', '/paper/plates/[water]'])
    expect(pageLanguage('cy', route).tag, route).toBe('cy');
  expect(pageLanguage('cy', '/register')).toMatchObject({ tag: 'en-GB', reviewed: true, englishPart: undefined });
  expect(pageLanguage('en', '/')).toMatchObject({ tag: 'en-GB', englishPart: undefined });
});
