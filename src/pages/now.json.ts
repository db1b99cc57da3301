import type { APIRoute } from 'astro';
import { loadAtlas } from '../atlas/load-atlas.ts';
import { nowFacts } from '../atlas/now-facts.ts';

/** The build adds the edition, the marks of the pages and the digest once every page is written. */
export const GET: APIRoute = async () => Response.json(nowFacts(await loadAtlas()));
