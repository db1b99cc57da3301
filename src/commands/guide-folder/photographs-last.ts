import type { AstroPrerenderer } from 'astro';

const PHOTOGRAPHS = /^\/photos\//;

/** Writes photographs after everything else, so that no page waits for an encoder that works beside them. */
export function photographsLast(pages: AstroPrerenderer): AstroPrerenderer {
  return {
    ...pages,
    getStaticPaths: async () => {
      const paths = await pages.getStaticPaths();
      const isPhotograph = ({ route }: (typeof paths)[number]) => PHOTOGRAPHS.test(route.route);
      return [...paths.filter((path) => !isPhotograph(path)), ...paths.filter(isPhotograph)];
    },
  };
}
