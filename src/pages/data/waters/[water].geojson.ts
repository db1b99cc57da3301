import type { APIRoute, GetStaticPaths } from 'astro';
import { loadAtlas } from '../../../atlas/load-atlas.ts';
import { waterGeojson } from '../../../atlas/venue-geojson.ts';

export const getStaticPaths = (async () => {
  const { venue } = await loadAtlas();
  return venue.waters.map(({ id }) => ({ params: { water: id } }));
}) satisfies GetStaticPaths;

export const GET: APIRoute = async ({ params }) =>
  Response.json(waterGeojson(await loadAtlas(), params.water ?? ''), {
    headers: { 'content-type': 'application/geo+json' },
  });
