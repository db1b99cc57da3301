import { yearOf } from '../domain/day.ts';
import { INTERVAL_SDS } from '../domain/interval-level.ts';
import type { RatedVenue } from './rated-venue.ts';
import type { FishSize } from './ratings.ts';

interface Catch {
  readonly water: string;
  readonly part: string;
  readonly year: number;
  readonly grams: number;
  readonly fish: number;
}

interface Group {
  readonly first: Catch;
  readonly catches: readonly Catch[];
  readonly fish: number;
  readonly meanGrams: number;
}

/** Where nothing shows the scatter (one session a group), fish are taken to vary by as much as their mean. */
const SCATTER_UNKNOWN = 1;

/**
 * Mean fish size of each bag part by water and year, where weight and count are both logged: all weight over all fish.
 * A session's weight is taken to scatter about count × mean with variance in proportion to the count; that scatter,
 * relative to the mean, is pooled over the part's waters and years, and gives an 80% interval on the log scale.
 */
export function fishSizes(venue: RatedVenue): FishSize[] {
  return venue.settings.bagParts.flatMap(({ id }) => {
    const groups = groupsOf(catchesOf(venue, id));
    const scatter = pooledScatter(groups);
    return groups.map(({ first, fish, meanGrams }) => {
      const factor = Math.exp((INTERVAL_SDS * scatter) / Math.sqrt(fish));
      return {
        water: first.water,
        part: id,
        year: first.year,
        fish,
        meanGrams,
        low80Grams: meanGrams / factor,
        high80Grams: meanGrams * factor,
      };
    });
  });
}

function catchesOf(venue: RatedVenue, part: string): Catch[] {
  const days = new Map(venue.events.map((event) => [event.id, event.day]));
  return venue.sessions.flatMap((session): Catch[] => {
    const day = days.get(session.event);
    const { weightGrams: grams, count: fish } = session.parts[part] ?? {};
    if (day === undefined || grams === undefined || fish === undefined || !(fish > 0) || !(grams > 0)) return [];
    return [{ water: session.water, part, year: yearOf(day), grams, fish }];
  });
}

function groupsOf(catches: readonly Catch[]): Group[] {
  const groups = [...Map.groupBy(catches, ({ water, year }) => `${water} ${year}`).values()];
  return groups
    .map((members): Group => {
      const fish = members.reduce((sum, each) => sum + each.fish, 0);
      const grams = members.reduce((sum, each) => sum + each.grams, 0);
      return { first: members[0]!, catches: members, fish, meanGrams: grams / fish };
    })
    .sort(
      (a, b) =>
        (a.first.water < b.first.water ? -1 : a.first.water > b.first.water ? 1 : 0) || a.first.year - b.first.year,
    );
}

/** Standard deviation of one fish over the mean fish, from how sessions' weights scatter about count × mean. */
function pooledScatter(groups: readonly Group[]): number {
  const degrees = groups.reduce((sum, { catches }) => sum + catches.length - 1, 0);
  if (degrees === 0) return SCATTER_UNKNOWN;
  const squares = groups.reduce(
    (sum, { catches, meanGrams }) =>
      sum + catches.reduce((part, { grams, fish }) => part + (grams / meanGrams - fish) ** 2 / fish, 0),
    0,
  );
  return Math.sqrt(squares / degrees);
}
