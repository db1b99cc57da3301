import type { APIRoute } from 'astro';
import { hazardRegister } from '../../atlas/hazard-register.ts';
import { loadAtlas } from '../../atlas/load-atlas.ts';
import { registerCsv } from '../../atlas/register-csv.ts';

export const GET: APIRoute = async () => {
  const register = hazardRegister(await loadAtlas());
  return new Response(registerCsv(register), { headers: { 'content-type': 'text/csv; charset=utf-8' } });
};
