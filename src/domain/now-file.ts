import { type Day, daysBetween } from './day.ts';
import { type PegFacts, type PegVerdict, pegVerdict, verdictRank } from './peg-verdict.ts';

/** A bank notice as far as it is told ahead of its page. */
export interface NowNotice {
  readonly id: string;
  readonly title: string;
  readonly kind: string;
  readonly from: Day;
  readonly until?: Day;
  readonly replacedFrom?: Day;
  /** Whom it concerns, as in a notice; of none of both the whole venue. */
  readonly waters?: readonly string[];
  readonly pegs?: readonly string[];
}

/**
 * What must be known at once, small enough to be asked for on every page: which edition is published, what decides over
 * every peg on any day, and the notices. A later edition is one of a later day; of two editions of one day nobody can
 * tell which came first.
 */
export interface NowFile {
  /** Digest of everything the guide holds. */
  readonly edition: string;
  /** The guide's day. */
  readonly day: Day;
  /** By peg key; a peg that is not among them is open. */
  readonly pegs: Readonly<Record<string, PegFacts>>;
  readonly notices: readonly NowNotice[];
  /** By address of a page: the mark that its own copy carries, so that a page knows whether it is of this edition. */
  readonly marks: Readonly<Record<string, string>>;
}

/**
 * The now files that still count, in the order they were seen. One is left behind by another that is of a later day and
 * was seen after it. All others stay, so that neither a stale host nor a day that was written wrong reopens a peg.
 */
export type SeenNows = readonly NowFile[];

/** Takes in a now file that was just seen. */
export function seeNow(seen: SeenNows, now: NowFile): SeenNows {
  return [...seen.filter(({ edition, day }) => day >= now.day && edition !== now.edition), now];
}

/** The seen edition of the latest day; of several of that day the one seen last. */
export function newestNow(seen: SeenNows): NowFile | null {
  return seen.reduce<NowFile | null>((newest, now) => (newest === null || now.day >= newest.day ? now : newest), null);
}

/**
 * The least open verdict that any seen now file gives a peg. Null where none was seen.
 * @param today the reader's day; a phone whose clock lies before an edition reads that edition on its own day
 */
export function verdictSeen(seen: SeenNows, peg: string, today: Day): PegVerdict | null {
  const verdicts = seen.map(({ day, pegs }) => {
    const facts = pegs[peg];
    return facts === undefined ? OPEN : pegVerdict(facts, daysBetween(today, day) > 0 ? day : today);
  });
  return verdicts.reduce<PegVerdict | null>(
    (worst, verdict) => (worst === null || verdictRank(verdict) > verdictRank(worst) ? verdict : worst),
    null,
  );
}

/** Every peg that some seen now file closes on that day, by key, in the order of the keys. */
export function closedPegs(seen: SeenNows, today: Day): readonly string[] {
  const keys = new Set(seen.flatMap(({ pegs }) => Object.keys(pegs)));
  return [...keys].filter((key) => verdictSeen(seen, key, today)?.state === 'closed').sort();
}

const OPEN: PegVerdict = { state: 'open' };
