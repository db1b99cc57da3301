import { placesBy } from './places.ts';

/** How a season is counted. Common practice of clubs, no source; the league's file says which. */
export interface LeagueRule {
  /** As in the matches: whether few or many points are good. */
  readonly count: 'low' | 'high';
  /** So many of the best matches count; all where null. The others are dropped. */
  readonly best: number | null;
  /** Points for a match that was missed, where few are good; where many are good it has none. */
  readonly missed: number;
}

/** One angler's points in one match of the season. */
export interface LeaguePoints {
  /** Opaque reference, never a name. */
  readonly angler: string;
  readonly match: string;
  readonly points: number;
  readonly grams: number;
}

/** One line of the standings. */
export interface Standing {
  readonly angler: string;
  readonly place: number;
  readonly points: number;
  readonly grams: number;
  readonly fished: number;
  /** By match, in the season's order; null where it was missed. */
  readonly matches: readonly { readonly match: string; readonly points: number | null; readonly counts: boolean }[];
}

/**
 * The standings of a season. Ties go by count-back: more of the best points among the matches that count, then more of the
 * next, and so on; then by the weight of all matches; who is level still shares the place.
 */
export function standings(
  matches: readonly string[],
  points: readonly LeaguePoints[],
  rule: LeagueRule,
): readonly Standing[] {
  const better = rule.count === 'low' ? 1 : -1;
  const lines = [...Map.groupBy(points, ({ angler }) => angler)].map(([angler, own]) => {
    const of = new Map(own.map((row) => [row.match, row]));
    const all = matches.map((match) => ({ match, points: of.get(match)?.points ?? null }));
    const value = (each: { readonly points: number | null }) => each.points ?? (rule.count === 'low' ? rule.missed : 0);
    const best = [...all.keys()]
      .sort((a, b) => better * (value(all[a]!) - value(all[b]!)) || a - b)
      .slice(0, rule.best ?? all.length);
    const counting = new Set(best);
    return {
      angler,
      points: best.reduce((sum, i) => sum + value(all[i]!), 0),
      // To the milligram: the same weights added up in another order are level.
      grams: Math.round(own.reduce((sum, { grams }) => sum + grams, 0) * 1000) / 1000,
      fished: own.length,
      counted: best.map((i) => value(all[i]!)),
      matches: all.map((each, i) => ({ ...each, counts: counting.has(i) })),
    };
  });
  const places = placesBy(
    lines,
    (a, b) => better * (a.points - b.points) || countBack(a.counted, b.counted, better) || b.grams - a.grams,
  );
  return lines
    .map(({ counted: _, ...line }, i) => ({ ...line, place: places[i]!.place }))
    .sort((a, b) => a.place - b.place || (a.angler < b.angler ? -1 : 1));
}

/** Negative where `a` has more of the best points, then of the next. */
function countBack(a: readonly number[], b: readonly number[], better: 1 | -1): number {
  const values = [...new Set([...a, ...b])].sort((x, y) => better * (x - y));
  for (const value of values) {
    const more = b.filter((own) => own === value).length - a.filter((own) => own === value).length;
    if (more !== 0) return more;
  }
  return 0;
}
