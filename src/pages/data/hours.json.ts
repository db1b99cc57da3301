import type { APIRoute } from 'astro';
import { hoursData } from '../../atlas/hours-data.ts';
import { loadAtlas } from '../../atlas/load-atlas.ts';

export const GET: APIRoute = async () => Response.json(hoursData((await loadAtlas()).venue));
