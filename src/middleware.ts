import { defineMiddleware } from 'astro:middleware';
import { withPagePolicy } from './layouts/page-policy.ts';
import { withoutIdleSpace } from './layouts/page-space.ts';

/** Astro's one place for what is done to every finished page. */
export const onRequest = defineMiddleware(async (_context, next) => {
  const response = await next();
  if (!response.headers.get('content-type')?.startsWith('text/html')) return response;
  return new Response(withPagePolicy(withoutIdleSpace(await response.text())), response);
});
