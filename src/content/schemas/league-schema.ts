import * as z from 'zod';
import type { League } from '../../domain/league.ts';
import { choice, text, wholeNumber } from './fields.ts';

/** The front matter of `leagues/<slug>.md`. */
export const LeagueSchema = z
  .strictObject({
    name: text('the name of the league'),
    matches: z
      .array(text('the file name, without ending, of a match'), { error: 'a list such as [2026-12-06-winter-three]' })
      .min(1, { error: 'at least one match' }),
    best: wholeNumber('how many of the best matches count', 1, 200).exactOptional(),
    missed: wholeNumber('points for a match that was missed', 0, 500).exactOptional(),
    counts: choice(['section-points', 'match-places']).exactOptional(),
  })
  .transform(({ best, missed, counts, ...rest }) => ({
    ...rest,
    best: best ?? null,
    missed: missed ?? null,
    counts: counts ?? ('section-points' as const),
  })) satisfies z.ZodType<Omit<League, 'id' | 'markdown'>>;
