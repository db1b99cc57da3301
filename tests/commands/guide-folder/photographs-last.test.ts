import type { AstroPrerenderer } from 'astro';
import { expect, it } from 'vitest';
import { photographsLast } from '../../../src/commands/guide-folder/photographs-last.ts';

type Path = Awaited<ReturnType<AstroPrerenderer['getStaticPaths']>>[number];

it('puts photographs after every page and leaves the order else as it was', async () => {
  const written: readonly (readonly [pathname: string, route: string])[] = [
    ['/notices/', '/notices'],
    ['/photos/a.avif', '/photos/[copy]'],
    ['/photos/b.webp', '/photos/[copy]'],
    // A water may be called that.
    ['/photos/1/', '/[water]/[peg]'],
    ['/kiln-pool/2/', '/[water]/[peg]'],
  ];
  const paths = written.map(([pathname, route]) => ({ pathname, route: { route } })) as Path[];
  const standard: AstroPrerenderer = {
    name: 'standard',
    getStaticPaths: async () => paths,
    render: () => Promise.reject(new Error('not asked for')),
  };
  const last = photographsLast(standard);
  expect((await last.getStaticPaths()).map(({ pathname }) => pathname)).toEqual([
    '/notices/',
    '/photos/1/',
    '/kiln-pool/2/',
    '/photos/a.avif',
    '/photos/b.webp',
  ]);
  expect(last.render).toBe(standard.render);
});
