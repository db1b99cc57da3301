/** A log with more sessions is rated alone: two such at once would need over a gigabyte of memory. */
const ALONE_FROM = 20_000;
/** Guides at once, however many processors there are: each needs up to half a gigabyte while its pages are written. */
const AT_MOST = 4;

/**
 * Which guides are built at the same time: rounds one after the other, each a list of ids. Large logs have a round of their
 * own and may use every thread; the others share the processors, one thread each.
 */
export function roundsAtOnce(
  venues: readonly { readonly id: string; readonly sessions: number }[],
  processors: number,
): readonly (readonly string[])[] {
  const size = Math.max(1, Math.min(AT_MOST, processors));
  const small = venues.filter(({ sessions }) => sessions <= ALONE_FROM);
  // The longest first and alike beside alike, so that no round waits for one of its guides.
  const ordered = [...small].sort((a, b) => b.sessions - a.sessions || (a.id < b.id ? -1 : 1));
  const rounds = Array.from({ length: Math.ceil(ordered.length / size) }, (_, round) =>
    ordered.slice(round * size, (round + 1) * size).map(({ id }) => id),
  );
  return [...venues.filter(({ sessions }) => sessions > ALONE_FROM).map(({ id }) => [id]), ...rounds];
}
