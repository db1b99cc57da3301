import type { APIRoute } from 'astro';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { JSON_FORMAT, pegData } from '../../atlas/peg-data.ts';

export const GET: APIRoute = async () => Response.json({ format: JSON_FORMAT, pegs: pegData(await loadAtlas()) });
