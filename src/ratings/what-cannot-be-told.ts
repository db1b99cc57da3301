import { hasDays } from '../domain/dated.ts';
import { MONTHS, monthName, monthOf } from '../domain/day.ts';
import { type DatedFeature, pegKey } from '../domain/peg.ts';
import type { RatedPeg, RatedVenue } from './rated-venue.ts';
import type { ModelSession } from './sessions-in-model.ts';

/** Sentences on what this log cannot tell, for the workings page: what is mixed up with what, and where nothing was fished. */
export function whatCannotBeTold(venue: RatedVenue, sessions: readonly ModelSession[]): string[] {
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

function littleToGoBy(sessions: readonly ModelSession[]): string[] {
  if (sessions.length === 0)
    return ['The log holds no session that counts: all worth stands at par and is only a guess.'];
  const notes: string[] = [];
  if (sessions.every(({ isCensored }) => isCensored)) {
    notes.push('Nobody weighed a bag: all worth stands at par and is only a guess.');
  }
  if (new Set(sessions.map(({ event }) => event.id)).size === 1) {
    notes.push(
      'All sessions are of one event: what is the peg and what was the luck of that day cannot be told apart.',
    );
  }
  const anglers = new Set(sessions.map(({ session }) => session.angler));
  if (anglers.size === 1 && !anglers.has(undefined)) {
    notes.push('All sessions are by one angler: worth here is of pegs as that angler fishes them.');
  }
  return notes;
}

function lonePegs(venue: RatedVenue): string[] {
  return venue.waters
    .filter(({ id }) => venue.pegs.filter((peg) => peg.water === id).length === 1)
    .map(({ name }) => `${name} has one peg: it is par itself, and its worth is 1 by definition.`);
}

function featuresEverywhere(venue: RatedVenue): string[] {
  return venue.waters.flatMap((water) => {
    const pegs = venue.pegs.filter((peg) => peg.water === water.id);
    // Where it came or went, the days before may tell.
    const everywhere = venue.settings.features.filter(({ id }) => pegs.every((peg) => hadAlways(peg, id)));
    if (pegs.length < 2) return [];
    return everywhere.map(
      ({ name }) =>
        `Every peg of ${water.name} has the feature “${name}”: it is part of par there, and that water tells nothing of its worth.`,
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

function featuresTogether(venue: RatedVenue): string[] {
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
    .map(
      (same) =>
        `${listed(same.map(({ name }) => `“${name}”`))} stand on the very same pegs: what they are worth rests on the same bags and cannot be told apart.`,
    );
}

function featuresNowhere(venue: RatedVenue): string[] {
  return venue.settings.features
    .filter(({ id }) => !venue.pegs.some((peg) => peg.features.includes(id)))
    .map(({ name }) => `No peg has the feature “${name}”: it has no worth.`);
}

function monthsNeverFished(venue: RatedVenue, sessions: readonly ModelSession[]): string[] {
  if (sessions.length === 0) return [];
  return venue.waters.flatMap((water) => {
    const fished = new Set(sessions.flatMap(({ event }) => (event.water === water.id ? [monthOf(event.day)] : [])));
    const never = MONTHS.filter((month) => !fished.has(month));
    if (never.length === 0) return [];
    if (never.length === 12)
      return [`${water.name} has no session that counts: its pegs’ worth rests on the other waters alone.`];
    return [
      `${water.name} was never fished in ${listed(never.map(monthName))}: what stands there is drawn from the months beside it and from the other waters.`,
    ];
  });
}

function pegsNeverDrawn(venue: RatedVenue, sessions: readonly ModelSession[]): string[] {
  if (sessions.length === 0) return [];
  const drawn = new Set(sessions.map(({ session }) => pegKey(session.water, session.peg)));
  return venue.waters.flatMap((water) => {
    const never = venue.pegs.filter((peg) => peg.water === water.id && !drawn.has(pegKey(peg.water, peg.peg)));
    if (never.length === 0 || never.length === venue.pegs.filter((peg) => peg.water === water.id).length) return [];
    const pegs = `${never.length === 1 ? 'Peg' : 'Pegs'} ${listed(never.map(({ peg }) => peg))}`;
    return [
      `${pegs} of ${water.name} never stood in a draw that counts: what is said of them rests on their features alone.`,
    ];
  });
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
