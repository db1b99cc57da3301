import { addDays, monthOf } from '../../src/domain/day.ts';
import { pegKey } from '../../src/domain/peg.ts';
import type { Venue } from '../../src/domain/venue.ts';
import { fitBag, type RatedBag, rateBag } from '../../src/ratings/bag-model.ts';
import { expectedBags } from '../../src/ratings/expected-bags.ts';
import { firstLook } from '../../src/ratings/first-look.ts';
import { venueBefore } from '../../src/ratings/log-before.ts';
import { partGrams } from '../../src/ratings/logged-part.ts';
import type { GeneratedVenue } from '../demo/make-venue.ts';

/** A chance that was stated, and whether it came so. */
export interface KeptPromise {
  readonly of: string;
  readonly stated: number;
  readonly happened: boolean;
  /** How far it missed: of a quarter the quantile loss of the log weight, of a chance its squared error; smaller is better. */
  readonly loss: number;
  /** False of a quarter that is nothing, which states no share. */
  readonly isShare: boolean;
  /** Of a bag that was weighed: every way of rating speaks of these. */
  readonly isWeighed: boolean;
  /** Bags of one day share its luck. */
  readonly event: string;
}

/** A bag below this counts as this in a quarter's loss: an ounce. */
const MIN_KG = 0.028;

/** Rates a generated venue without its last year, and holds what it promises against that year's matches. */
export function promisesOf(
  { venue, truth }: Pick<GeneratedVenue, 'venue' | 'truth'>,
  rate: (before: Venue) => readonly RatedBag[] = rateWhole,
): KeptPromise[] {
  const from = addDays(venue.settings.guideDay, -365);
  const before = venueBefore(venue, from);
  const bags = rate(before);
  const promised = new Map(
    expectedBags(before, bags, 1).map((row) => [`${pegKey(row.water, row.peg)} ${row.month}`, row]),
  );
  const promises: KeptPromise[] = [];
  const matches = venue.events.filter(({ day, kind, listing }) => day > from && kind === 'match' && listing === 'full');
  for (const event of matches) {
    const sessions = venue.sessions.filter(
      (session) => session.event === event.id && ['weighed', 'dnw'].includes(session.status),
    );
    const order = [...sessions].sort((a, b) => (b.weightGrams ?? 0) - (a.weightGrams ?? 0));
    for (const session of sessions) {
      const row = promised.get(`${pegKey(session.water, session.peg)} ${monthOf(event.day)}`);
      if (row === undefined) continue;
      const isWeighed = session.status !== 'dnw';
      // The bag is promised to an average rod: take out what this one brought along.
      const skill = session.angler === undefined ? 0 : (truth.anglers[session.angler] ?? 0);
      const quarters = (of: string, bag: typeof row.total, kilograms: number) => {
        for (const [stated, at] of [
          [0.25, bag.lowKg],
          [0.5, bag.middleKg],
          [0.75, bag.highKg],
        ] as const) {
          const over = Math.log(Math.max(kilograms, MIN_KG) / Math.max(at, MIN_KG));
          const loss = over > 0 ? stated * over : (stated - 1) * over;
          const happened = kilograms <= at;
          // Where a quarter is nothing, more than that have nothing: it promises no share.
          promises.push({ of: `quarter ${of}`, stated, happened, loss, isShare: at > 0, isWeighed, event: event.id });
        }
      };
      // What was not weighed is nearly always below every quarter.
      quarters('total', row.total, ((session.weightGrams ?? 0) / 1000) * Math.exp(-skill));
      for (const part of row.parts) {
        // A part told in two says what weighed bags hold; one told by a bound speaks of the others as well.
        const isOfAll = bags.find(({ fitted }) => fitted.bag === part.part)?.presence === null;
        if (session.status === 'dnw' && !isOfAll) continue;
        const grams = session.status === 'dnw' ? 0 : partGrams(session, part.part, venue.settings.bagParts);
        if (grams === undefined) continue;
        if (session.status !== 'dnw')
          promises.push(chance(`none of ${part.part}`, part.chanceOfNone, grams === 0, isWeighed, event.id));
        quarters(part.part, part.bag, (grams / 1000) * Math.exp(-skill));
      }
      promises.push(
        chance('frame', row.chanceToFrame, order.indexOf(session) < event.framePlaces, isWeighed, event.id),
      );
    }
  }
  return promises;
}

/** Every bag as the guide rates it. */
function rateWhole(before: Venue): readonly RatedBag[] {
  const { lesson, asked, start } = firstLook(before);
  const choice = { dnw: lesson.mechanism ?? undefined, asked };
  return [
    rateBag(before, fitBag(before, 'total', choice, start === null ? {} : { start })),
    ...before.settings.bagParts.map(({ id }) => rateBag(before, fitBag(before, id, choice))),
  ];
}

function chance(of: string, stated: number, happened: boolean, isWeighed: boolean, event: string): KeptPromise {
  return { of, stated, happened, loss: (stated - Number(happened)) ** 2, isShare: true, isWeighed, event };
}
