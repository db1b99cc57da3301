import { defineMiddleware } from 'astro:middleware';
import { handedOver } from './atlas/handed-over.ts';
import { loadAtlas, venueDirectory } from './atlas/load-atlas.ts';
import { pageLanguage } from './layouts/page-language.ts';
import { withPagePolicy } from './layouts/page-policy.ts';
import { withoutIdleSpace } from './layouts/page-space.ts';

/** Stands at the head of every page that is followed while its worth is of an earlier log. */
const OLD_RATINGS =
  '<p role="status" data-old-ratings><strong>Worth on this page is of an earlier log:</strong> it is being worked out anew, and the page comes again when that is done.</p>';

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
