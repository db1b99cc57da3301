import { capitalised } from '../domain/capitalised.ts';
import { formatDay } from '../domain/day.ts';
import { nameOf } from '../domain/name-of.ts';
import type { DnwLesson } from '../ratings/dnw-mechanism.ts';
import { normalCdf } from '../ratings/engine/normal-cdf.ts';
import { SOLID_BELOW, THIN_ABOVE } from '../ratings/evidence.ts';
import type { FitReport } from '../ratings/fit-report.ts';
import type { Atlas } from './atlas.ts';
import { type BacktestView, backtestView } from './backtest-view.ts';
import { type DepthWorkings, depthWorkings } from './depth-workings.ts';
import { type LevelRow, levelRows } from './level-rows.ts';
import { dnwSilenceWords, LEFT_OUT_WORDS, ratingsNoteWords } from './ratings-words.ts';
import { type PartRow, sizeOfPartsWords, varianceComponents } from './variance-components.ts';
import { venueChanges } from './venue-changes.ts';
import { sessionsWords } from './worth-words.ts';

/** A count of the log with its words. */
export interface CountRow {
  readonly what: string;
  readonly count: string;
  readonly note: string;
}

/** How the ratings were computed and how well they do. */
export interface WorkingsPage {
  /** "136 events from 2 Mar 2024 to 15 Nov 2026". */
  readonly span: string;
  readonly wentIn: readonly CountRow[];
  readonly leftOut: readonly CountRow[];
  readonly leftOutTotal: string;
  readonly isChosenLeftOut: boolean;
  /** What changed at the venue within its log, and how the ratings take it. */
  readonly changes: readonly string[];
  /** Model terms of the total bag, then a column for each bag part. */
  readonly parts: readonly PartRow[];
  readonly partBags: readonly string[];
  readonly partsWords: readonly string[];
  readonly dnwWords: readonly string[];
  readonly backtest: BacktestView | null;
  readonly evidence: readonly { readonly word: string; readonly means: string }[];
  readonly notes: readonly string[];
  /** How each fit ended. */
  readonly fits: readonly CountRow[];
  /** How the waters' own levels changed over the log, water by water. */
  readonly levels: readonly LevelRow[];
  readonly depths: readonly DepthWorkings[];
}

const STATUS_ROWS = [
  { status: 'weighed', what: 'Weighed', note: 'the weight is used as it is' },
  {
    status: 'blank',
    what: 'Nought on the sheet',
    note: 'read as did not weigh, unless the club says that a nought means nothing was caught',
  },
  { status: 'dnw', what: 'Did not weigh (DNW)', note: 'known only as low: see below' },
  {
    status: 'unlisted',
    what: 'Not listed',
    note: 'in an event that lists only the places: taken as less than the lowest listed bag',
  },
  { status: 'absent', what: 'Absent', note: 'carries no weight' },
  { status: 'disqualified', what: 'Disqualified', note: 'carries no weight' },
] as const;

/** Everything the workings page says. */
export function workingsPage(atlas: Atlas): WorkingsPage {
  const { venue, ratings } = atlas;
  const leftOut = ratings.leftOut.map(({ why, sessions }) => ({
    ...LEFT_OUT_WORDS[why],
    count: String(sessions),
  }));
  const partName = (part: string) => nameOf(venue.settings.bagParts, part);
  const total = ratings.leftOut.reduce((sum, { sessions }) => sum + sessions, 0);
  return {
    span: spanWords(atlas),
    wentIn: wentIn(atlas),
    leftOut,
    leftOutTotal: sessionsWords(total),
    changes: venueChanges(atlas),
    isChosenLeftOut: !venue.settings.ratingRules.countChosenPegs,
    parts: varianceComponents(ratings.bags),
    partBags: ratings.bags.map(({ bag }) => (bag === 'total' ? 'total bag' : partName(bag).toLowerCase())),
    partsWords: sizeOfPartsWords(ratings.bags[0]?.model),
    dnwWords: dnwWords(atlas),
    backtest: ratings.backtest === null ? null : backtestView(ratings.backtest, partName),
    evidence: evidenceRows(),
    notes: ratings.notes.map(ratingsNoteWords),
    fits: fitRows(atlas),
    levels: levelRows(atlas),
    depths: depthWorkings(atlas),
  };
}

function spanWords({ venue }: Atlas): string {
  const days = venue.events.map(({ day }) => day).sort();
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return 'no event yet';
  return `${venue.events.length.toLocaleString('en-GB')} events from ${formatDay(first)} to ${formatDay(last)}`;
}

function wentIn({ venue, ratings }: Atlas): readonly CountRow[] {
  const model = ratings.bags[0]?.model;
  const rows = STATUS_ROWS.map(({ status, what, note }) => ({
    what,
    note,
    count: venue.sessions.filter((session) => session.status === status).length,
  })).filter(({ count }) => count > 0);
  const shown = rows.map((row) => ({ ...row, count: row.count.toLocaleString('en-GB') }));
  const all = { what: 'All sessions in the log', count: venue.sessions.length.toLocaleString('en-GB'), note: '' };
  if (model === undefined) return [...shown, all];
  const used = {
    what: 'Of these the ratings use',
    count: model.sessions.toLocaleString('en-GB'),
    note: `${model.censored.toLocaleString('en-GB')} of them known only as “at most this much”`,
  };
  return [...shown, all, used];
}

/** What the log taught of DNWs, or what is assumed instead and why. */
export function dnwLessonWords(lesson: DnwLesson): string {
  if (lesson.mechanism === null) {
    return `How low cannot be learned from this log (${dnwSilenceWords(lesson)}): each is taken as some weight below the lower quarter of the bags weighed in that event, which is an assumption.`;
  }
  const { shift, blur } = lesson.mechanism;
  const even = Math.exp(shift);
  const atMiddle = normalCdf(shift / blur);
  return `How low was learned from this log: with ${even < 0.01 ? 'next to nothing' : `${even.toFixed(2)} of the event’s middle bag`} one angler in two goes home without weighing, with the middle bag itself ${atMiddle < 0.005 ? 'hardly anybody' : `${Math.round(atMiddle * 100)} in 100`}.`;
}

function dnwWords({ venue, ratings }: Atlas): readonly string[] {
  const without = ratings.withoutDnw;
  if (without === null) return ['Everyone who fished weighed in, so nothing had to be assumed here.'];
  const lesson = dnwLessonWords(ratings.dnwLesson);
  const { residualSd } = without;
  const logged = venue.sessions.filter(({ status }) => status === 'dnw').length;
  // The table above counts the whole log: two figures of one thing need the reason between them.
  const ofLog = logged > without.dnw ? ` (of ${logged} in the log; the rest are left out above)` : '';
  const change = `Without the ${sessionsWords(without.dnw)} that did not weigh${ofLog}, no fair or solid worth moves by more than ${without.largestChange.toFixed(2)} par.`;
  if (residualSd.with === 0) return [lesson, change];
  return [
    lesson,
    change,
    `With them two bags of three lie within a factor of ${factorWords(residualSd.with)} of what was expected, without them within ${factorWords(residualSd.without)}.`,
  ];
}

/** A standard deviation on the log scale as a factor, which people can picture: 0.4 is `1.49`. */
function factorWords(sd: number): string {
  return Math.exp(sd).toFixed(2);
}

/** Why a fit stopped, in words; every reason the engine gives has one. */
const STOPPED: Readonly<Record<FitReport['stopped'], string>> = {
  converged: 'found its best variances',
  boundary: 'found its best variances, one of them zero',
  held: 'had no variance to find',
  'no data': 'had nothing to go by and tells what was assumed',
  'no further gain': 'stopped short: no step gained any more; all it tells is shown as thin',
  'iteration limit': 'stopped short at its limit of steps; all it tells is shown as thin',
};

function fitRows({ venue, ratings }: Atlas): readonly CountRow[] {
  const parts = new Map(venue.settings.bagParts.map(({ id, name }) => [id, name.toLowerCase()]));
  return ratings.fits.map(({ of, stopped, steps }) => {
    const name = of === 'total' ? 'total bag' : (parts.get(of) ?? of);
    return { what: capitalised(name), count: String(steps), note: STOPPED[stopped] };
  });
}

function evidenceRows(): WorkingsPage['evidence'] {
  const removed = (share: number) => `${Math.round((1 - share * share) * 100)}%`;
  return [
    {
      word: 'thin',
      means: `the log removed less than ${removed(THIN_ABOVE)} of the doubt there was before it (as a variance)`,
    },
    { word: 'fair', means: `it removed ${removed(THIN_ABOVE)} to ${removed(SOLID_BELOW)} of it` },
    { word: 'solid', means: `it removed more than ${removed(SOLID_BELOW)} of it` },
  ];
}
