import type { AstroPrerenderer } from 'astro';

/**
 * Pages that are written several at once, and end as one after another would: at the first that fails, which alone is told. Astro goes
 * on with those that wait; from then on none of them comes to an end.
 */
export function severalAtOnce(pages: AstroPrerenderer): AstroPrerenderer {
  let hasFailed = false;
  const never = new Promise<never>(() => undefined);
  return {
    ...pages,
    render: async (request, options) => {
      if (hasFailed) return never;
      try {
        const page = await pages.render(request, options);
        return hasFailed ? never : page;
      } catch (error) {
        if (hasFailed) return never;
        hasFailed = true;
        throw error;
      }
    },
  };
}
