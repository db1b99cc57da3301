import { expect, it } from 'vitest';
import { rulesPage } from '../../src/atlas/rules-page.ts';
import { EXAMPLE_SETTINGS } from '../domain/example-venue.ts';
import { exampleAtlas } from './example-atlas.ts';

it('publishes the rules without anything that could run, and how to reach the club’s roles', () => {
  const settings = {
    ...EXAMPLE_SETTINGS,
    rulesMarkdown: '# Nets\n\nKnotless only.<script>alert(1)</script>',
    contacts: [
      { role: 'Bailiff', phone: '01632 960184' },
      { role: 'Secretary', email: 'secretary@example.org' },
    ],
  };
  const page = rulesPage(exampleAtlas({ venue: { settings } }));
  expect(page.rulesHtml).toContain('<h2>Nets</h2>');
  expect(page.rulesHtml).not.toContain('script');
  expect(page.contacts).toEqual([
    { role: 'Bailiff', phone: { words: '01632 960184', href: 'tel:01632960184' }, email: null },
    { role: 'Secretary', phone: null, email: { words: 'secretary@example.org', href: 'mailto:secretary@example.org' } },
  ]);
});
