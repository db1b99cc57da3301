import type { APIRoute } from 'astro';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { venueGeojson } from '../../atlas/venue-geojson.ts';

export const GET: APIRoute = async () =>
  Response.json(venueGeojson(await loadAtlas()), { headers: { 'content-type': 'application/geo+json' } });
