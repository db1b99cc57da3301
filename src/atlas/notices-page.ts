import { type Day, formatDay, isDay } from '../domain/day.ts';
import type { Notice, NoticeKind } from '../domain/notice.ts';
import { concernsPeg, concernsWater, type NoticeState, noticeState, replacedFrom } from '../domain/notice-state.ts';
import { type PegKey, pegKey } from '../domain/peg.ts';
import type { Venue } from '../domain/venue.ts';

const KIND_WORDS: Readonly<Record<NoticeKind, string>> = {
  hazard: 'Hazard',
  closure: 'Closure',
  works: 'Works',
  news: 'News',
};

/** A notice with how it stands on the guide's day, and what a reader's phone needs to say how it stands today. */
export interface NoticeView {
  readonly id: string;
  readonly title: string;
  readonly kind: NoticeKind;
  readonly kindWord: string;
  readonly state: NoticeState;
  readonly from: Day;
  readonly until: Day | null;
  /** "from 9 Nov 2026 until 5 Dec 2026", "on 12 Dec 2026", "from 16 Nov 2026 until further notice". */
  readonly days: string;
  /** The day on which it was taken back, where it was before the day of the guide. */
  readonly cancelledOn: Day | null;
  /** The day its words were last changed, or it was replaced or taken back. */
  readonly changedOn: Day;
  /** The day from which another notice takes its place, or it was taken back. */
  readonly replacedFrom: Day | null;
  readonly replacedBy: string | null;
  /** Of a closure whose pegs stay closed by their own records after its last day: what its reader must know; null of any other. */
  readonly staysClosed: string | null;
  readonly markdown: string;
  /** "Kiln Pool", "Kiln Pool pegs 21, 22", "the whole venue". */
  readonly about: string;
}

export interface NoticesByState {
  readonly live: readonly NoticeView[];
  readonly upcoming: readonly NoticeView[];
  /** Past and replaced ones, latest first. */
  readonly past: readonly NoticeView[];
}

/** All notices of the venue, as they stand on the guide's day. */
export function noticesPage(venue: Venue): NoticesByState {
  return byState(venue, venue.notices);
}

/** The notices that speak of one water. */
export function noticesOfWater(venue: Venue, water: string): NoticesByState {
  return byState(
    venue,
    venue.notices.filter((notice) => concernsWater(notice, water)),
  );
}

/** The notices that speak of one peg. */
export function noticesOfPeg(venue: Venue, water: string, peg: PegKey): NoticesByState {
  return byState(
    venue,
    venue.notices.filter((notice) => concernsPeg(notice, water, peg)),
  );
}

/** Notices in the order a sheet needs them: live hazards and closures stand before the peg's dangers, all else after. */
export function warningsApart({ live, upcoming }: NoticesByState): {
  readonly warnings: NoticesByState;
  readonly others: NoticesByState;
} {
  const warns = ({ kind }: NoticeView) => kind === 'hazard' || kind === 'closure';
  return {
    warnings: { live: live.filter(warns), upcoming: [], past: [] },
    others: { live: live.filter((view) => !warns(view)), upcoming, past: [] },
  };
}

function byState(venue: Venue, notices: readonly Notice[]): NoticesByState {
  const views = [...notices]
    .sort((a, b) => b.from.localeCompare(a.from) || a.id.localeCompare(b.id))
    .map((notice) => noticeView(venue, notice));
  const inState = (...states: readonly NoticeState[]) => views.filter((view) => states.includes(view.state));
  return { live: inState('live'), upcoming: inState('upcoming').reverse(), past: inState('past', 'replaced') };
}

function noticeView(venue: Venue, notice: Notice): NoticeView {
  return {
    id: notice.id,
    title: notice.title,
    kind: notice.kind,
    kindWord: KIND_WORDS[notice.kind],
    state: noticeState(notice, venue.notices, venue.settings.guideDay),
    from: notice.from,
    until: notice.until ?? null,
    days: daysWords(notice),
    cancelledOn: cancelledBy(notice, venue.settings.guideDay),
    changedOn: changedOn(venue, notice),
    replacedFrom: replacedFrom(notice, venue.notices),
    replacedBy: venue.notices.find((other) => other.replaces === notice.id)?.id ?? null,
    staysClosed: staysClosed(venue, notice),
    markdown: notice.markdown,
    about: aboutWords(venue, notice),
  };
}

/** A closure that ends reads as reopened: where the records of its pegs say otherwise, it says so too. */
function staysClosed({ pegs, settings }: Venue, notice: Notice): string | null {
  if (notice.kind !== 'closure' || notice.until === undefined || notice.pegs.length === 0) return null;
  const of = pegs.filter((peg) => notice.pegs.includes(pegKey(peg.water, peg.peg)));
  const closed = of.filter(({ status }) => status === 'closed');
  if (closed.length === 0) return null;
  const named = `${closed.map(({ peg }) => peg).join(', ')} ${closed.length === 1 ? 'stays' : 'stay'}`;
  const which = closed.length === of.length ? 'pegs stay' : named;
  return notice.until < settings.guideDay ? `notice ended; ${which} closed` : `${which} closed after it`;
}

function cancelledBy({ cancelledOn }: Notice, guideDay: Day): Day | null {
  return cancelledOn !== undefined && cancelledOn <= guideDay ? cancelledOn : null;
}

/** The last day on which what a reader sees of a notice changed: it was written, reworded, replaced or taken back. */
function changedOn(venue: Venue, notice: Notice): Day {
  const written = notice.id.slice(0, 10);
  const ended = replacedFrom(notice, venue.notices);
  const days = [
    notice.changedOn ?? (isDay(written) && written < notice.from ? written : notice.from),
    ...(ended !== null && ended <= venue.settings.guideDay ? [ended] : []),
  ];
  return days.sort().at(-1) as Day;
}

function daysWords({ from, until }: Notice): string {
  if (until === from) return `on ${formatDay(from)}`;
  return `from ${formatDay(from)} until ${until === undefined ? 'further notice' : formatDay(until)}`;
}

function aboutWords(venue: Venue, notice: Notice): string {
  const nameOf = (water: string) => venue.waters.find(({ id }) => id === water)?.name ?? water;
  if (notice.pegs.length > 0) {
    const byWater = Map.groupBy(notice.pegs, (key) => key.slice(0, key.indexOf('/')));
    return [...byWater]
      .map(([water, keys]) => {
        const pegs = keys.map((key) => key.slice(key.indexOf('/') + 1));
        return `${nameOf(water)} ${pegs.length === 1 ? 'peg' : 'pegs'} ${pegs.join(', ')}`;
      })
      .join('; ');
  }
  return notice.waters.length === 0 ? 'the whole venue' : notice.waters.map(nameOf).join(', ');
}
