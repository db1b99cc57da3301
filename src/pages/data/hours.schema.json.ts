import type { APIRoute } from 'astro';
import { hoursDataSchema } from '../../atlas/hours-data.ts';

export const GET: APIRoute = () => Response.json(hoursDataSchema());
