import { say } from '../page-words.ts';
import { clockTime } from '../round/elements.ts';
import type { Outing } from './outing.ts';

/** What was done, with the time of it where the all in is known: "Carp 3 lb 2 oz at 11:42". @param minute since the all in */
export function atTime(what: string, { start }: Pick<Outing, 'start'>, minute: number): string {
  if (start === null) return what;
  return say('pace.at', { what, time: clockTime(new Date(Date.parse(start) + minute * 60_000)) });
}
