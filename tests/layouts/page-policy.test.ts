import { createHash } from 'node:crypto';
import { expect, it } from 'vitest';
import { withPagePolicy } from '../../src/layouts/page-policy.ts';

const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
const page = (scripts: string, styles: string, body: string) =>
  `<meta http-equiv="content-security-policy" content="default-src 'self'; script-src 'self'${scripts}; style-src 'self'${styles};">${body}`;

it('allows the styles a page holds and no others', () => {
  const [own, other] = ['a{color:red}', 'b{color:blue}'];
  const html = page('', ` ${hash(other)} ${hash(own)}`, `<style>${own}</style>`);
  expect(withPagePolicy(html)).toBe(page('', ` ${hash(own)}`, `<style>${own}</style>`));
});

it('lets a page without a script of its own run only files of the guide', () => {
  const html = page(` ${hash('x')} ${hash('y')}`, '', '<script type="module" src="/a.js"></script>');
  expect(withPagePolicy(html)).toBe(page('', '', '<script type="module" src="/a.js"></script>'));
});

it('never allows a style that Astro did not', () => {
  const html = page('', ` ${hash('a{}')}`, '<style>b{}</style>');
  expect(withPagePolicy(html)).not.toContain('sha256');
});

it('leaves a page without a policy as it is', () => {
  expect(withPagePolicy('<p>x</p>')).toBe('<p>x</p>');
});
