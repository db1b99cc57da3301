import type { APIRoute } from 'astro';
import { hazardRegister, registerCsv } from '../../atlas/hazard-register.ts';
import { loadAtlas } from '../../atlas/load-atlas.ts';

export const GET: APIRoute = async () => {
  const { venue } = await loadAtlas();
  return new Response(registerCsv(hazardRegister(venue)), { headers: { 'content-type': 'text/csv; charset=utf-8' } });
};
