import { defineMiddleware } from 'astro:middleware';
import { handedOver } from './atlas/handed-over.ts';
import { venueDirectory } from './atlas/load-atlas.ts';
import { withPagePolicy } from './layouts/page-policy.ts';
import { withoutIdleSpace } from './layouts/page-space.ts';

/** Stands at the head of every page that is followed while its returns are of an earlier log. */
const OLD_RATINGS =
  '<p role="status" data-old-ratings><strong>The returns on this page are those of an earlier log:</strong> new ones are being worked out, and the page comes anew when they are there.</p>';

/** Astro's one place for what is done to every finished page. */
export const onRequest = defineMiddleware(async (_context, next) => {
  const response = await next();
  if (!response.headers.get('content-type')?.startsWith('text/html')) return response;
  const page = withPagePolicy(withoutIdleSpace(await response.text()));
  const isOld = import.meta.env.DEV && handedOver(venueDirectory())?.areRatingsOld === true;
  return new Response(isOld ? page.replace(/(<main[^>]*>)/, `$1${OLD_RATINGS}`) : page, response);
});
