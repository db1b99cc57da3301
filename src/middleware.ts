import { defineMiddleware } from 'astro:middleware';
import { withPagePolicy } from './layouts/page-policy.ts';

/** Astro's one place for what is done to every finished page. */
export const onRequest = defineMiddleware(async (_context, next) => {
  const response = await next();
  if (!response.headers.get('content-type')?.startsWith('text/html')) return response;
  return new Response(withPagePolicy(await response.text()), response);
});
