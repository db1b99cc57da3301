import { COMPASS_POINTS } from '../domain/compass.ts';
import { type Day, type Month, monthOf } from '../domain/day.ts';
import { nameOf } from '../domain/name-of.ts';
import type { Peg, PegKey } from '../domain/peg.ts';
import { formatDistance } from '../domain/place-words.ts';
import { placeKey } from '../domain/stand.ts';
import type { Neighbour, PegSurvey, ReachTarget } from '../ground/survey.ts';
import type { WordKey } from '../words/languages.ts';
import { type Say, sayIn } from '../words/say.ts';
import { type Atlas, pegOf, surveyOfPeg, surveyOfWater, waterOf } from './atlas.ts';
import { type BagPlan, bagPlan } from './bag-plan.ts';
import { windWorths } from './day-worths.ts';
import { type DepthSectionView, depthSection } from './depth-section.ts';
import { linesOfPegWords } from './lines-survey-words.ts';
import { type NoticesByState, noticesOfPeg } from './notices-page.ts';
import { type PegAnswer, pegAnswer } from './peg-answer.ts';
import { bankFacts, type Fact, walksWorthTelling, walkWords, waysUnderLines } from './peg-bank.ts';
import { type PegEmergency, pegEmergency } from './peg-emergency.ts';
import { type PegMention, pegMention } from './peg-mention.ts';
import { type PegNotes, pegNotes } from './peg-notes.ts';
import { limitWords, pegSafety, type SafetyEntry } from './peg-safety.ts';
import { type SessionCounts, sessionCounts } from './peg-sessions.ts';
import { type SkyFigures, skyFigures, sunMonths, type WindRow, windRows } from './peg-sky.ts';
import { pegUnknowns, type Unknown } from './peg-unknowns.ts';
import { type PegStanding, standingOfPeg } from './peg-verdicts.ts';
import { siteLink } from './site-link.ts';
import { changeLines, numberLines, type PastLine } from './stand-history.ts';
import { type WorthByMonth, worthByMonth } from './worth-by-month.ts';

/** The next peg along the bank. */
export interface NeighbourView extends PegMention {
  readonly gap: string;
  /** As the angler sits. */
  readonly side: 'left' | 'right';
}

/** Everything on the page of one peg, in words and figures of the venue's units. */
export interface PegSheet {
  readonly peg: Peg;
  readonly water: { readonly id: string; readonly name: string; readonly datum: string };
  readonly survey: PegSurvey;
  readonly guideDay: Day;
  readonly month: Month;
  /** "Corner", "Near shelf". */
  readonly features: readonly { readonly name: string; readonly href: string | null }[];
  readonly facing: string;
  /** What stands before the sun and wind in the angler's face: they hang on the facing, measured or by the map. */
  readonly inYourFace: string;
  /** For search engines and link previews. */
  readonly description: string;
  readonly standing: PegStanding;
  /** The next pegs along the bank that are closed, or will be or were on another day. */
  readonly closedBeside: readonly NeighbourView[];
  /** Whose number this is and was. */
  readonly numbers: readonly PastLine[];
  /** What changed here, and how the log is read for it. */
  readonly changes: readonly PastLine[];
  readonly limits: readonly string[];
  readonly safety: readonly SafetyEntry[];
  /** What is known of overhead lines, and who looked. */
  readonly linesWords: string;
  readonly notices: NoticesByState;
  readonly reach: readonly Fact[];
  readonly depth: DepthSectionView;
  /** What the phone keeps depths of the reader's own under. */
  readonly placeKey: string;
  /** Null where the log rates nothing here. */
  readonly worths: WorthByMonth | null;
  readonly bag: BagPlan | null;
  /** Expected bag, weight to frame, depth, sun and wind: what the first screen tells. */
  readonly answer: PegAnswer;
  readonly notes: PegNotes;
  readonly bank: readonly Fact[];
  readonly walks: readonly Fact[];
  /** Ways that pass an overhead line while the walks told do not. */
  readonly waysUnderLines: readonly Fact[];
  /** Claims of the record that the ground does not bear out. */
  readonly accessFindings: PegSurvey['accessFindings'];
  readonly wind: readonly WindRow[];
  readonly sky: SkyFigures;
  readonly sessions: SessionCounts;
  /** What nobody knows here. */
  readonly unknowns: readonly Unknown[];
  readonly emergency: PegEmergency;
}

/** Puts together the sheet of one peg. */
export function pegSheet(atlas: Atlas, key: PegKey): PegSheet {
  const peg = pegOf(atlas, key);
  const { name, datum } = waterOf(atlas, peg.water);
  const survey = surveyOfPeg(atlas, key);
  const { settings } = atlas.venue;
  const { units } = settings;
  const say = sayIn(settings.language);
  const month = monthOf(settings.guideDay);
  const standing = standingOfPeg(atlas, peg);
  const [safety, sessions] = [pegSafety(atlas, peg), sessionCounts(atlas, key)];
  const [depth, worths, bag, sun] = [
    depthSection(atlas, key),
    worthByMonth(atlas, key),
    bagPlan(atlas, key),
    sunMonths(survey, say),
  ];
  return {
    peg,
    water: { id: peg.water, name, datum },
    survey,
    guideDay: settings.guideDay,
    month,
    features: peg.features.map((id) => ({
      name: nameOf(settings.features, id),
      // The features page tells of those the log rates.
      href: atlas.monthsByFeature.has(id) ? siteLink(`features/#feature-${id}`) : null,
    })),
    facing: say(peg.isFacingEstimated ? 'sheet.facesByMap' : 'sheet.faces', {
      point: COMPASS_POINTS[Math.round(peg.facingDegrees / 22.5) % 16] ?? '',
      degrees: Math.round(peg.facingDegrees),
    }),
    inYourFace: say(peg.isFacingEstimated ? 'answer.inYourFaceByMap' : 'answer.inYourFace'),
    description: descriptionOf(peg, name, standing),
    standing,
    closedBeside: neighboursOf(atlas, survey).filter(
      ({ standing: { closed, dated } }) => closed !== null || dated !== undefined,
    ),
    numbers: numberLines(atlas, peg),
    changes: changeLines(atlas, peg),
    limits: limitWords(peg, settings),
    safety,
    linesWords: linesOfPegWords(atlas, peg),
    notices: noticesOfPeg(atlas.venue, peg.water, key),
    reach: survey.reach.map((target) => ({
      name: targetName(target, say),
      words: `${formatDistance(target.distanceMetres, units)}, ${sideWords(target.bearingDegrees, peg.facingDegrees, say)}`,
    })),
    depth,
    placeKey: placeKey(peg),
    worths,
    bag,
    answer: pegAnswer(worths, bag, depth, sun, survey.wind, month, say),
    notes: pegNotes(peg.notes, month),
    bank: bankFacts(peg, units),
    walks: walksWorthTelling(survey).map((walk) => ({
      name: say('bank.from', { place: walk.from }),
      words: walkWords(walk, units),
    })),
    waysUnderLines: waysUnderLines(survey),
    accessFindings: survey.accessFindings,
    wind: windRows(survey, units, say),
    sky: skyFigures(peg, survey, surveyOfWater(atlas, peg.water).timeZone, units, windWorths(atlas.ratings)),
    sessions,
    unknowns: pegUnknowns(atlas, peg, survey, sessions, safety),
    emergency: pegEmergency(peg, name, survey, atlas.venue),
  };
}

function descriptionOf(peg: Peg, waterName: string, { closed: closure }: PegStanding): string {
  const where = peg.where === undefined ? '' : `: ${peg.where}`;
  const closed = closure === null ? '' : ` ${closure.headline}.`;
  return `Peg ${peg.peg} of ${waterName}${where}.${closed}`;
}

/**
 * The next pegs along the bank, each once: on a water of two pegs each is the other's neighbour both ways round, and the
 * shorter way is told.
 */
export function neighboursOf(atlas: Atlas, survey: PegSurvey): readonly NeighbourView[] {
  return nearestOnce(survey.neighbours).flatMap((neighbour) => neighbourView(atlas, neighbour));
}

function nearestOnce(neighbours: readonly Neighbour[]): readonly Neighbour[] {
  const byGap = [...neighbours].sort((a, b) => a.gapMetres - b.gapMetres);
  return neighbours.filter((one) => byGap.find(({ peg }) => peg === one.peg) === one);
}

function neighbourView(atlas: Atlas, { peg: key, side, gapMetres }: Neighbour): readonly NeighbourView[] {
  const peg = atlas.pegsByKey.get(key);
  if (peg === undefined) return [];
  return [
    {
      ...pegMention(atlas, peg),
      gap: formatDistance(gapMetres, atlas.venue.settings.units),
      side,
    },
  ];
}

const TARGET_NAMES: Readonly<Record<string, WordKey>> = {
  'far-bank': 'sheet.target.far-bank',
  island: 'sheet.target.island',
  reeds: 'sheet.target.reeds',
  lilies: 'sheet.target.lilies',
  aerator: 'sheet.target.aerator',
  inlet: 'sheet.target.inlet',
};

function targetName({ what, name }: ReachTarget, say: Say): string {
  const key = TARGET_NAMES[what];
  return name ?? (key === undefined ? what : say(key));
}

/** Where something lies as the angler sits: `straight ahead`, `20° to the left`. */
export function sideWords(bearingDegrees: number, facingDegrees: number, say: Say): string {
  const turn = Math.round(((bearingDegrees - facingDegrees + 540) % 360) - 180);
  if (Math.abs(turn) <= 5) return say('sheet.straightAhead');
  return say(turn < 0 ? 'sheet.turnLeft' : 'sheet.turnRight', { degrees: Math.abs(turn) });
}
