import type { APIRoute } from 'astro';
import { goneData } from '../../atlas/gone-data.ts';
import { loadAtlas } from '../../atlas/load-atlas.ts';

export const GET: APIRoute = async () => Response.json(goneData(await loadAtlas()));
