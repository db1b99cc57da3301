import { placesBy } from './places.ts';
import { type PointsRule, sectionPoints } from './section-points.ts';
import { countedGrams, type WeighedIn } from './weighed-in.ts';

/** How a match is decided. */
export interface ScoringRule extends PointsRule {
  /** `weight`: the heaviest bag wins. `points`: the best of the sections first, and among them the heavier bag. */
  readonly overall: 'weight' | 'points';
  /** How many places frame. */
  readonly places: number;
}

/** One peg of the finished match. */
export interface ResultRow extends WeighedIn {
  readonly points: number;
  /** In its section by weight; null for who did not fish or does not count. */
  readonly sectionPlace: number | null;
  readonly overallPlace: number | null;
  /** `frame`: among the places. `section`: won the section. `default`: the best of a section whose winners frame already. */
  readonly won: 'frame' | 'section' | 'default' | null;
}

/** A match worked out from what the scales say, in the order of the overall places, then of pegs as given. */
export function matchResults(weighed: readonly WeighedIn[], rule: ScoringRule): readonly ResultRow[] {
  const points = sectionPoints(weighed, rule);
  const rows = weighed.map((row, i) => ({ row, points: points[i]! }));
  const counted = rows.filter(({ row }) => countedGrams(row) !== null);
  const better = rule.count === 'low' ? 1 : -1;
  const byWeight = (a: Scored, b: Scored) => countedGrams(b.row)! - countedGrams(a.row)!;
  const byPoints = (a: Scored, b: Scored) => better * (a.points - b.points) || byWeight(a, b);
  const overall = placesBy(counted, rule.overall === 'weight' ? byWeight : byPoints);
  const overallOf = new Map(counted.map(({ row }, i) => [row, overall[i]!.place]));
  const sectionOf = new Map<WeighedIn, number>();
  for (const section of Map.groupBy(counted, ({ row }) => row.section).values()) {
    const places = placesBy(section, byWeight);
    section.forEach(({ row }, i) => void sectionOf.set(row, places[i]!.place));
  }
  const won = winners(counted, overallOf, sectionOf, rule.places);
  return rows
    .map(({ row, points: own }) => ({
      ...row,
      points: own,
      sectionPlace: sectionOf.get(row) ?? null,
      overallPlace: overallOf.get(row) ?? null,
      won: won.get(row) ?? null,
    }))
    .sort((a, b) => (a.overallPlace ?? Number.MAX_VALUE) - (b.overallPlace ?? Number.MAX_VALUE));
}

/** What each way to win is called, on the phone and in the guide. */
export const WON_WORDS = { frame: 'frames', section: 'section', default: 'section, by default' } as const;

interface Scored {
  readonly row: WeighedIn;
  readonly points: number;
}

/**
 * Who is paid for what: the frame first, with all that tie for its last place; then in each section the best that do not
 * frame, as `section` where nobody of the section frames, else by `default`. Who caught nothing wins nothing.
 */
function winners(
  counted: readonly Scored[],
  overallOf: ReadonlyMap<WeighedIn, number>,
  sectionOf: ReadonlyMap<WeighedIn, number>,
  places: number,
): ReadonlyMap<WeighedIn, 'frame' | 'section' | 'default'> {
  const won = new Map<WeighedIn, 'frame' | 'section' | 'default'>();
  const caught = counted.map(({ row }) => row).filter((row) => row.grams > 0 && row.status === 'weighed');
  for (const row of caught) if (overallOf.get(row)! <= places) won.set(row, 'frame');
  for (const section of Map.groupBy(caught, (row) => row.section).values()) {
    const rest = section.filter((row) => won.get(row) === undefined);
    const best = Math.min(...rest.map((row) => sectionOf.get(row)!));
    for (const row of rest) {
      if (sectionOf.get(row) === best) won.set(row, best === 1 ? 'section' : 'default');
    }
  }
  return won;
}
