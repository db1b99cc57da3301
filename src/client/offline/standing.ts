import { type Day, formatDay } from '../../domain/day.ts';
import { closedPegs, type NowFile, newestNow, type SeenNows, verdictSeen } from '../../domain/now-file.ts';
import type { PegVerdict } from '../../domain/peg-verdict.ts';
import { closedHeadline, closedReason } from '../../domain/verdict-words.ts';
import { newsLines } from './news-lines.ts';
import { pegOfPath, waterOfPath } from './page-address.ts';

/** An edition as a page states it. */
export interface Edition {
  readonly edition: string;
  readonly day: Day;
}

/** What is known about a page as it is shown. */
export interface PageState {
  /** Below the base: `kiln-pool/14/`. */
  readonly path: string;
  /** The edition the page is of; null where its bytes are of none that this phone knows. */
  readonly page: Edition | null;
  /** Whether the host just told which edition is published. */
  readonly isChecked: boolean;
  /** When it last did, in milliseconds since 1970. */
  readonly lastCheck: number | null;
  readonly seen: SeenNows;
  /** The now file of the page's own edition, which the page agrees with. */
  readonly own: NowFile | null;
  /** How much of a guide that was never kept whole is here; null where one is whole or none was begun. */
  readonly part: { readonly have: number; readonly need: number; readonly isFull: boolean } | null;
  /** The edition that is kept whole, and how many of its files for visitors are not here: left out to save data. */
  readonly whole: (Edition & { readonly missing: number }) | null;
}

/** One sentence for the verdict's own place. */
export interface StandingLine {
  readonly kind: 'closed' | 'limited' | 'notice' | 'older' | 'unchecked' | 'part';
  readonly strong: string;
  readonly words: string;
}

/**
 * What a page that is, or may be, older than the club's latest must say where its verdict stands: what has closed since, what
 * limits and notices came since, that it is an older copy, that it could not be checked. Nothing where the page is of the edition just told. What is
 * closed on the page stays so, whatever a later edition says.
 */
export function standingLines(state: PageState, today: Day): readonly StandingLine[] {
  return [...closedLines(state, today), ...newsLines(state, today), ...copyLines(state)];
}

/**
 * Pegs that this page may still show as open: closed by what the phone has seen, and not by the page's own edition, both
 * on its own day, as it was printed, and on the reader's, as its script has it.
 */
export function closedSince({ seen, own }: Pick<PageState, 'seen' | 'own'>, today: Day): readonly string[] {
  const isClosedByPage = (key: string, now: NowFile) =>
    [now.day, today].every((day) => verdictSeen([now], key, day)?.state === 'closed');
  return closedPegs(seen, today).filter((key) => own === null || !isClosedByPage(key, own));
}

function closedLines(state: PageState, today: Day): readonly StandingLine[] {
  const closed = closedSince(state, today);
  const peg = pegOfPath(state.path);
  if (peg !== null && closed.includes(peg)) return [closedLine(verdictSeen(state.seen, peg, today))];
  const water = waterOfPath(state.path);
  const waters = Map.groupBy(closed, (key) => key.slice(0, key.indexOf('/')));
  const named = water !== null && waters.has(water) ? [water] : peg === null ? [...waters.keys()] : [];
  return named.map((each) => ({
    kind: 'closed',
    strong: 'Closed',
    words: `${each.replaceAll('-', ' ')}: pegs ${(waters.get(each) ?? []).map(pegName).join(', ')}. Whatever else this page says of them.`,
  }));
}

function pegName(key: string): string {
  return key.slice(key.indexOf('/') + 1);
}

function closedLine(verdict: PegVerdict | null): StandingLine {
  const isClosed = verdict?.state === 'closed';
  return {
    kind: 'closed',
    strong: isClosed ? closedHeadline(verdict) : 'Closed',
    words: `Not in the draw, not to be fished, whatever else this page says${isClosed ? `: ${closedReason(verdict)}` : ''}.`,
  };
}

function copyLines({ page, isChecked, lastCheck, seen, part }: PageState): readonly StandingLine[] {
  const newest = newestNow(seen);
  // While the first copy is being fetched the imprint counts it: a line up here would push the page down and pull it up again.
  const partLine: readonly StandingLine[] =
    part === null || (isChecked && page !== null && !part.isFull)
      ? []
      : [
          {
            kind: 'part',
            strong: 'Only part of the guide is on this phone',
            words: `${part.have} of ${part.need} files so far. ${part.isFull ? 'The phone has no room for more: make room, then open the guide again.' : 'Open it where there is a signal to fetch the rest.'}`,
          },
        ];
  if (newest !== null && page !== null && page.edition !== newest.edition) {
    return [
      {
        kind: 'older',
        strong: `Older copy, data to ${formatDay(page.day)}`,
        words: `The club has published ${editionWords(newest)}; this page of it could not be fetched yet. Ask before you fish.`,
      },
      ...partLine,
    ];
  }
  if (isChecked && page !== null) return partLine;
  const since = lastCheck === null ? '' : ` since ${timeWords(lastCheck)}`;
  return [
    {
      kind: 'unchecked',
      strong: isChecked ? 'This page fits no edition' : `Not checked with the club${since}`,
      words: isChecked
        ? 'The guide may be changing at this moment. Load the page again in a minute; until then rely on the boards.'
        : 'Something may have closed since. Read the boards, and ask.',
    },
    ...partLine,
  ];
}

/** "the edition of 24 Nov 2026 (3f9a2c1b)". */
function editionWords({ edition, day }: Edition): string {
  return `the edition of ${formatDay(day)} (${edition.slice(0, 8)})`;
}

function timeWords(time: number): string {
  const date = new Date(time);
  const two = (value: number) => String(value).padStart(2, '0');
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  return `${formatDay(day)}, ${two(date.getHours())}:${two(date.getMinutes())}`;
}
