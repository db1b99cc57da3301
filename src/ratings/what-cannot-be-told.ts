import { hasDays } from '../domain/dated.ts';
import { MONTHS, monthOf } from '../domain/day.ts';
import { type DatedFeature, pegKey } from '../domain/peg.ts';
import type { RatedPeg, RatedVenue } from './rated-venue.ts';
import type { RatingsNote } from './ratings.ts';
import type { ModelSession } from './sessions-in-model.ts';

/** What this log cannot tell, for the workings page: what is mixed up with what, and where nothing was fished. */
export function whatCannotBeTold(venue: RatedVenue, sessions: readonly ModelSession[]): RatingsNote[] {
  return [
    ...littleToGoBy(sessions),
    ...lonePegs(venue),
    ...featuresEverywhere(venue),
    ...featuresTogether(venue),
    ...featuresNowhere(venue),
    ...monthsNeverFished(venue, sessions),
    ...pegsNeverDrawn(venue, sessions),
  ];
}

function littleToGoBy(sessions: readonly ModelSession[]): RatingsNote[] {
  if (sessions.length === 0) return [{ about: 'no-session' }];
  const notes: RatingsNote[] = [];
  if (sessions.every(({ isCensored }) => isCensored)) notes.push({ about: 'nobody-weighed' });
  if (new Set(sessions.map(({ event }) => event.id)).size === 1) notes.push({ about: 'one-event' });
  const anglers = new Set(sessions.map(({ session }) => session.angler));
  if (anglers.size === 1 && !anglers.has(undefined)) notes.push({ about: 'one-angler' });
  return notes;
}

function lonePegs(venue: RatedVenue): RatingsNote[] {
  return venue.waters
    .filter(({ id }) => venue.pegs.filter((peg) => peg.water === id).length === 1)
    .map(({ name }) => ({ about: 'lone-peg', water: name }));
}

function featuresEverywhere(venue: RatedVenue): RatingsNote[] {
  return venue.waters.flatMap((water): RatingsNote[] => {
    const pegs = venue.pegs.filter((peg) => peg.water === water.id);
    // Where it came or went, the days before may tell.
    const everywhere = venue.settings.features.filter(({ id }) => pegs.every((peg) => hadAlways(peg, id)));
    if (pegs.length < 2) return [];
    return everywhere.map(
      ({ name }): RatingsNote => ({ about: 'feature-everywhere', water: water.name, feature: name }),
    );
  });
}

/** The same text for two features that stood at a peg on the same days; none where the peg never had it. */
function placeAndDays({ water, peg, features, datedFeatures }: RatedPeg, feature: string): string[] {
  const spells = (datedFeatures ?? features.map((id): DatedFeature => ({ id }))).filter(({ id }) => id === feature);
  return spells.map(({ from = '', until = '' }) => `${pegKey(water, peg)} ${from}/${until}`);
}

function hadAlways({ features, datedFeatures = [] }: RatedPeg, feature: string): boolean {
  return features.includes(feature) && !datedFeatures.some((dated) => dated.id === feature && hasDays(dated));
}

function featuresTogether(venue: RatedVenue): RatingsNote[] {
  const carriers = venue.settings.features
    .map(({ id, name }) => ({
      name,
      pegs: venue.pegs.some((peg) => peg.features.includes(id))
        ? venue.pegs.flatMap((peg) => placeAndDays(peg, id)).join(' ')
        : '',
    }))
    .filter(({ pegs }) => pegs !== '');
  return [...Map.groupBy(carriers, ({ pegs }) => pegs).values()]
    .filter((same) => same.length > 1)
    .map((same) => ({ about: 'features-together', features: same.map(({ name }) => name) }));
}

function featuresNowhere(venue: RatedVenue): RatingsNote[] {
  return venue.settings.features
    .filter(({ id }) => !venue.pegs.some((peg) => peg.features.includes(id)))
    .map(({ name }) => ({ about: 'feature-nowhere', feature: name }));
}

function monthsNeverFished(venue: RatedVenue, sessions: readonly ModelSession[]): RatingsNote[] {
  if (sessions.length === 0) return [];
  return venue.waters.flatMap((water): RatingsNote[] => {
    const fished = new Set(sessions.flatMap(({ event }) => (event.water === water.id ? [monthOf(event.day)] : [])));
    const never = MONTHS.filter((month) => !fished.has(month));
    if (never.length === 0) return [];
    const { name } = water;
    if (never.length === 12) return [{ about: 'water-without-session', water: name }];
    return [{ about: 'months-never-fished', water: name, months: never }];
  });
}

function pegsNeverDrawn(venue: RatedVenue, sessions: readonly ModelSession[]): RatingsNote[] {
  if (sessions.length === 0) return [];
  const drawn = new Set(sessions.map(({ session }) => pegKey(session.water, session.peg)));
  return venue.waters.flatMap((water): RatingsNote[] => {
    const never = venue.pegs.filter((peg) => peg.water === water.id && !drawn.has(pegKey(peg.water, peg.peg)));
    if (never.length === 0 || never.length === venue.pegs.filter((peg) => peg.water === water.id).length) return [];
    return [{ about: 'pegs-never-drawn', water: water.name, pegs: never.map(({ peg }) => peg) }];
  });
}
