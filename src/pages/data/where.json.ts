import type { APIRoute } from 'astro';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { pegPlaces } from '../../atlas/peg-places.ts';

export const GET: APIRoute = async () => Response.json(pegPlaces(await loadAtlas()));
