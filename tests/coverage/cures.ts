import type { Venue } from '../../src/domain/venue.ts';
import { type BagModel, fitBag, type RatedBag, rateBag } from '../../src/ratings/bag-model.ts';
import { firstLook } from '../../src/ratings/first-look.ts';
import { fitRatings } from '../../src/ratings/fit-ratings.ts';
import { ratingModel } from '../../src/ratings/rating-model.ts';
import type { BagId } from '../../src/ratings/ratings.ts';
import { sessionsInModel } from '../../src/ratings/sessions-in-model.ts';
import { MONTH_SEASON, type Season } from '../../src/ratings/temperature-season.ts';

/** Which of the cures a rating holds. */
export interface Cures {
  /** How low a DNW lies is learned from the log; else it lies below the lower quarter. */
  readonly learned: boolean;
  /** A part that weighed nothing lies below the least of it ever weighed; else below the scale's division. */
  readonly least: boolean;
  /** A part that is often missing is told in two. */
  readonly twoParts: boolean;
  /** A feature's year has a wave beside its walk. */
  readonly wave: boolean;
  /** The waters' seasons share a wave. */
  readonly venueWave: boolean;
  /** Peg × year and water × year, where the log asks for them. */
  readonly years: boolean;
}

const NONE: Cures = { learned: false, least: false, twoParts: false, wave: false, venueWave: false, years: false };

/** No cure, each alone, and all together. */
export const RECIPES: readonly { readonly name: string; readonly cures: Cures }[] = [
  { name: 'before', cures: NONE },
  { name: 'DNW learned', cures: { ...NONE, learned: true } },
  { name: 'least bag', cures: { ...NONE, least: true } },
  { name: 'two parts', cures: { ...NONE, twoParts: true } },
  { name: 'wave', cures: { ...NONE, wave: true } },
  { name: 'venue wave', cures: { ...NONE, venueWave: true } },
  { name: 'years', cures: { ...NONE, years: true } },
  {
    name: 'all together',
    cures: { learned: true, least: true, twoParts: true, wave: true, venueWave: true, years: true },
  },
];

/** Rates every bag of a venue with some of the cures. */
export function rateWith(venue: Venue, cures: Cures): readonly RatedBag[] {
  const look = firstLook(venue);
  const season: Season = {
    ...MONTH_SEASON,
    waves: cures.wave ? MONTH_SEASON.waves : null,
    venueWaves: cures.venueWave ? MONTH_SEASON.venueWaves : null,
  };
  const choice = {
    season,
    dnw: (cures.learned ? look.lesson.mechanism : null) ?? undefined,
    asked: cures.years ? look.asked : {},
  };
  return ['total', ...venue.settings.bagParts.map(({ id }) => id)].map((bag) => {
    const whole = bag === 'total' || cures.twoParts ? fitBag(venue, bag, choice) : null;
    return rateBag(venue, whole ?? fitInOne(venue, bag, choice, cures));
  });
}

/** A part by one bound: whatever weighed nothing lies below the least of it, or below the division of the scale. */
function fitInOne(
  venue: Venue,
  bag: BagId,
  { season, dnw, asked }: NonNullable<Parameters<typeof fitBag>[2]> & { readonly season: Season },
  { least }: Cures,
): BagModel {
  const counted = sessionsInModel(venue, bag, { dnw });
  const division = venue.settings.ratingRules.scaleDivisionGrams;
  const none = Math.log(counted.noneBelowGrams / 1000);
  const sessions = least
    ? counted.sessions
    : counted.sessions.map((row) =>
        row.isCensored && row.isDnw !== true && row.logKg === none ? { ...row, logKg: Math.log(division / 1000) } : row,
      );
  const model = ratingModel(venue, sessions, season, asked);
  const fit = fitRatings(model.latent);
  return { bag, sessions, noneBelowGrams: least ? counted.noneBelowGrams : division, model, fit, presence: null };
}
