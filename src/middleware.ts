import { defineMiddleware } from 'astro:middleware';
import { handedOver } from './atlas/handed-over.ts';
import { loadAtlas, venueDirectory } from './atlas/load-atlas.ts';
import { pageLanguage } from './layouts/page-language.ts';
import { withPagePolicy } from './layouts/page-policy.ts';
import { withoutIdleSpace } from './layouts/page-space.ts';

/** Stands at the head of every page that is followed while its returns are of an earlier log. */
const OLD_RATINGS =
  '<p role="status" data-old-ratings><strong>The returns on this page are those of an earlier log:</strong> new ones are being worked out, and the page comes anew when they are there.</p>';

/** Astro's one place for what is done to every finished page. */
export const onRequest = defineMiddleware(async (context, next) => {
  const { language } = (await loadAtlas()).venue.settings;
  Object.assign(context.locals, pageLanguage(language, context.routePattern));
  const response = await next();
  if (!response.headers.get('content-type')?.startsWith('text/html')) return response;
  const page = withPagePolicy(withoutIdleSpace(await response.text()));
  const isOld = import.meta.env.DEV && handedOver(venueDirectory())?.areRatingsOld === true;
  return new Response(isOld ? page.replace(/(<main[^>]*>)/, `$1${OLD_RATINGS}`) : page, response);
});
