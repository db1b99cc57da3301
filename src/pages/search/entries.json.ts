import type { APIRoute } from 'astro';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { searchEntries } from '../../atlas/search-entries.ts';

export const GET: APIRoute = async () => Response.json(searchEntries(await loadAtlas()));
