import { type Day, formatDay } from '../../domain/day.ts';
import { concernsPeg, concernsWater, noticeStateOn } from '../../domain/notice-state.ts';
import { type NowFile, type NowNotice, newestNow, verdictSeen } from '../../domain/now-file.ts';
import { limitWords } from '../../domain/verdict-words.ts';
import { pegOfPath, waterOfPath } from './page-address.ts';
import type { PageState, StandingLine } from './standing.ts';

/** More would hide the page; the notices page of the newer edition has them all. */
const MAX_NOTICES = 4;

/**
 * What the newest edition that the phone has seen says and an older page does not: limits of its peg, and notices that
 * concern it. Nothing over a page of that edition. A limit or notice of the page is never taken back here.
 */
export function newsLines(
  { path, seen, own }: Pick<PageState, 'path' | 'seen' | 'own'>,
  today: Day,
): readonly StandingLine[] {
  const newest = newestNow(seen);
  if (newest === null || own?.edition === newest.edition) return [];
  return [...limitLines(newest, own, pegOfPath(path), today), ...noticeLines(newest, own, path, today)];
}

function limitLines(newest: NowFile, own: NowFile | null, peg: string | null, today: Day): readonly StandingLine[] {
  if (peg === null) return [];
  const known = own === null ? [] : limitsIn(own, peg, today);
  const fresh = limitsIn(newest, peg, today).filter((words) => !known.includes(words));
  return fresh.length === 0 ? [] : [{ kind: 'limited', strong: 'Limited', words: `${fresh.join('; ')}.` }];
}

function limitsIn(now: NowFile, peg: string, today: Day): readonly string[] {
  const verdict = verdictSeen([now], peg, today);
  return verdict?.state === 'limited' ? verdict.limits.map(limitWords) : [];
}

function noticeLines(newest: NowFile, own: NowFile | null, path: string, today: Day): readonly StandingLine[] {
  const known = new Set(own?.notices.map((notice) => JSON.stringify(notice)));
  const fresh = newest.notices.filter(
    (notice) =>
      notice.kind !== 'news' &&
      noticeStateOn(notice, today < newest.day ? newest.day : today) === 'live' &&
      concernsPage(notice, path, newest) &&
      !known.has(JSON.stringify(notice)),
  );
  const told = fresh.slice(0, MAX_NOTICES).map(noticeLine);
  const more = fresh.length - told.length;
  const rest = {
    kind: 'notice',
    strong: `${more} more notices`,
    words: 'They stand on the club’s notices page.',
  } as const;
  return more === 0 ? told : [...told, rest];
}

/** A page of no water that the newest edition names (the first page, the rules) has the notices of all. */
function concernsPage(notice: NowNotice, path: string, newest: NowFile): boolean {
  const { waters = [], pegs = [] } = notice;
  const peg = pegOfPath(path);
  const water = waterOfPath(path);
  if (peg !== null && water !== null) return concernsPeg({ waters, pegs }, water, peg);
  return water === null || !isNamed(water, newest) || concernsWater({ waters, pegs }, water);
}

function isNamed(water: string, { pegs, notices }: NowFile): boolean {
  const keys = [...Object.keys(pegs), ...notices.flatMap(({ pegs: ofNotice = [] }) => ofNotice)];
  return keys.some((key) => key.startsWith(`${water}/`)) || notices.some(({ waters = [] }) => waters.includes(water));
}

function noticeLine({ title, kind, from, until, pegs = [] }: NowNotice): StandingLine {
  const days = until === undefined ? `from ${formatDay(from)}` : `${formatDay(from)} to ${formatDay(until)}`;
  const where =
    pegs.length === 0 ? '' : ` Pegs: ${pegs.map((peg) => peg.replace('/', ' ').replaceAll('-', ' ')).join(', ')}.`;
  return { kind: 'notice', strong: NAMES[kind] ?? 'Notice', words: `${title} (${days}).${where}` };
}

const NAMES: Readonly<Record<string, string>> = {
  hazard: 'Hazard notice',
  closure: 'Closure notice',
  works: 'Notice of works',
};
