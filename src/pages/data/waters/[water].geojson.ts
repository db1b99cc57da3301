import type { APIRoute } from 'astro';
import { loadAtlas } from '../../../atlas/load-atlas.ts';
import { waterGeojson } from '../../../atlas/venue-geojson.ts';
import { waterPaths } from '../../../layouts/route-paths.ts';

export const getStaticPaths = waterPaths;

export const GET: APIRoute = async ({ params }) =>
  Response.json(waterGeojson(await loadAtlas(), params.water ?? ''), {
    headers: { 'content-type': 'application/geo+json' },
  });
