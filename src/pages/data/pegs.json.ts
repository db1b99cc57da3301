import type { APIRoute } from 'astro';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { pegData } from '../../atlas/peg-data.ts';

export const GET: APIRoute = async () => Response.json(pegData(await loadAtlas()));
