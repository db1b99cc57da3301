import type { AstroPrerenderer } from 'astro';
import { expect, it } from 'vitest';
import { severalAtOnce } from '../../../src/commands/guide-folder/several-at-once.ts';

/** Pages that end when they are told to, by their paths. */
function slowPages() {
  const begun = new Map<string, PromiseWithResolvers<Response>>();
  const pages = severalAtOnce({
    name: 'slow',
    getStaticPaths: async () => [],
    render: ({ url }) => {
      const page = Promise.withResolvers<Response>();
      begun.set(new URL(url).pathname, page);
      return page.promise;
    },
  });
  const ended: string[] = [];
  const ask = (path: string) =>
    pages.render(new Request(`https://guide.example${path}`), {} as Parameters<AstroPrerenderer['render']>[1]).then(
      () => void ended.push(`${path} written`),
      ({ message }: Error) => void ended.push(`${path} ${message}`),
    );
  return { begun, ended, ask };
}

const afterAll = () => new Promise((resolve) => setImmediate(resolve));

it('hands every page over as it is, whichever comes first', async () => {
  const { begun, ended, ask } = slowPages();
  void ask('/a/');
  void ask('/b/');
  begun.get('/b/')!.resolve(new Response('b'));
  await afterAll();
  begun.get('/a/')!.resolve(new Response('a'));
  await afterAll();
  expect(ended).toEqual(['/b/ written', '/a/ written']);
});

it('tells the first failure alone, and begins and ends no page after it', async () => {
  const { begun, ended, ask } = slowPages();
  void ask('/a/');
  void ask('/b/');
  void ask('/c/');
  begun.get('/b/')!.reject(new Error('is broken'));
  await afterAll();
  begun.get('/a/')!.resolve(new Response('a'));
  begun.get('/c/')!.reject(new Error('is broken too'));
  void ask('/d/');
  await afterAll();
  expect(ended).toEqual(['/b/ is broken']);
  expect(begun.has('/d/')).toBe(false);
});
