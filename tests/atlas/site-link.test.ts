import { expect, it } from 'vitest';
import { pegLink, siteLink } from '../../src/atlas/site-link.ts';

it('siteLink stands below a sub-path, whether or not slashes meet', () => {
  expect(siteLink('safety/', '/')).toBe('/safety/');
  expect(siteLink('safety/', '/guide')).toBe('/guide/safety/');
  expect(siteLink('/safety/', '/guide/')).toBe('/guide/safety/');
  expect(siteLink('', '/guide/')).toBe('/guide/');
});

it('pegLink writes awkward peg names as an address', () => {
  expect(pegLink('kiln-pool', '14a')).toBe('/kiln-pool/14a/');
  expect(pegLink('kiln-pool', 'A/1')).toBe('/kiln-pool/A%2F1/');
});
