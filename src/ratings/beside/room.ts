import type { RatedVenue } from '../rated-venue.ts';
import type { ModelSession } from '../sessions-in-model.ts';

/** Empty pegs on both sides of an angler together, up to these; a bank that ends counts as open. */
export const MAX_ROOM = 4;
const MAX_A_SIDE = MAX_ROOM / 2;

const byNumber = new Intl.Collator('en', { numeric: true });

/**
 * How many pegs beside each session stayed empty that day, from who fished where: two at most on either side, in the order of the
 * numbers. Pegs are drawn, so room is as fair a comparison within a match as the pegs are.
 */
export function roomInLog(venue: RatedVenue): (session: ModelSession) => number {
  const places = new Map(
    [...Map.groupBy([...venue.pegs, ...(venue.retired ?? [])], ({ water }) => water)].map(([water, pegs]) => [
      water,
      new Map(
        [...new Set(pegs.map(({ peg }) => peg))]
          .sort((a, b) => byNumber.compare(a, b))
          .map((peg, place) => [peg, place]),
      ),
    ]),
  );
  const placeOf = (water: string, peg: string) => places.get(water)?.get(peg) ?? 0;
  const fished = new Map(
    [...Map.groupBy(venue.sessions, ({ event }) => event)].map(([event, of]) => [
      event,
      of
        .filter(({ status }) => status !== 'absent')
        .map(({ water, peg }) => placeOf(water, peg))
        .sort((a, b) => a - b),
    ]),
  );
  return ({ session, event }) => {
    const own = placeOf(session.water, session.peg);
    const taken = fished.get(event.id)!;
    const before = taken.findLast((place) => place < own);
    const after = taken.find((place) => place > own);
    const empty = (gap: number | undefined) => Math.min(MAX_A_SIDE, gap ?? MAX_A_SIDE);
    return (
      empty(before === undefined ? undefined : own - before - 1) +
      empty(after === undefined ? undefined : after - own - 1)
    );
  };
}
