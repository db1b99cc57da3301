import type { Units } from '../domain/bag.ts';
import { floatSettings } from '../domain/float-settings.ts';
import { formatLength, shortDepth } from '../domain/length.ts';
import type { PegKey } from '../domain/peg.ts';
import { POLE_JOINTS_METRES } from '../domain/pole-joints.ts';
import type { LineDepth, PegSurvey } from '../ground/survey.ts';
import { effectiveReach } from '../ground/swept-area.ts';
import { dayWords } from '../words/day-words.ts';
import { type Say, sayIn } from '../words/say.ts';
import { type Atlas, pegOf, surveyOfPeg, surveyOfWater, waterOf } from './atlas.ts';
import { depthMarks } from './depth-marks.ts';
import { noDepthWords } from './depth-words.ts';
import { type DepthSection, depthProfile } from './drawing/depth-profile.ts';
import { isClosedForEver, standingOfPeg } from './peg-verdicts.ts';
import { landStretches, unplumbedStretches } from './profile-stretches.ts';

/** One line of the depth table. */
export interface DepthRow {
  readonly id: string;
  readonly name: string;
  /** Null where there is no depth: then `why` says so. */
  readonly depth: {
    /** To the centimetre, for a script that sets the float by another reading. */
    readonly datumMetres: number;
    /** Below datum, short (`2.05`, `6′9″`), and in the other unit. */
    readonly datum: string;
    readonly otherUnit: string;
    /** By the latest gauge reading: dead depth, for heavier hook baits. Null without a reading: then it is the datum's. */
    readonly today: string | null;
    /** The same in the other unit; the datum's where there is no reading. */
    readonly todayOther: string;
    /** Over depth, for light natural baits. */
    readonly lightBait: string;
    /** "plumbed here", "nearest plumbing 1.1 m away". */
    readonly known: string;
  } | null;
  readonly why: string;
  readonly permitted: boolean;
}

/** Depth out from a peg, ready to be placed. */
export interface DepthSectionView {
  /** Section through bank and water; null where the peg faces no water. */
  readonly drawing: string | null;
  /** What level zero is: "top of the sill". */
  readonly datum: string;
  /** "By the gauge on 20 Nov 2026 the water stood 0.06 m above datum." */
  readonly level: string | null;
  /** `20 Nov`, the column head of today's depths. */
  readonly levelDay: string | null;
  readonly rows: readonly DepthRow[];
  readonly isPlumbed: boolean;
  /** The drawing carries a ruler in sections of a pole. */
  readonly hasPole: boolean;
}

/** The depth section of a peg: drawing, depths at the trade's lines and float settings. */
export function depthSection(atlas: Atlas, key: PegKey): DepthSectionView {
  const { units, language } = atlas.venue.settings;
  const say = sayIn(language);
  const peg = pegOf(atlas, key);
  const survey = surveyOfPeg(atlas, key);
  const { level } = surveyOfWater(atlas, peg.water);
  // Over a peg that is never fished no pole is drawn.
  const isClosed = isClosedForEver(standingOfPeg(atlas, peg));
  const poleMetres = isClosed ? 0 : effectiveReach(peg, atlas.venue.settings.permittedReach).poleMetres;
  const rows = survey.lineDepths.map((line) => depthRow(line, level?.metres ?? null, units, say));
  return {
    drawing:
      survey.profile.length < 2
        ? null
        : depthProfile(drawingOf(survey, units, level?.metres ?? null, poleMetres), sectionWords(survey)),
    datum: waterOf(atlas, peg.water).datum,
    level: level === null ? null : levelWords(level.metres, dayWords(level.day, say), units, say),
    levelDay: level === null ? null : dayWords(level.day, say).replace(/ \d{4}$/, ''),
    rows,
    hasPole: poleMetres > 0,
    isPlumbed: rows.some(({ depth }) => depth !== null),
  };
}

function depthRow(line: LineDepth, levelMetres: number | null, units: Units, say: Say): DepthRow {
  const { id, name, permitted, depthMetres } = line;
  if (depthMetres === null) return { id, name, permitted, depth: null, why: whyNot(line, units, say) };
  const now = Math.max(0, depthMetres + (levelMetres ?? 0));
  const { lightMetres, heavyMetres } = floatSettings(now);
  const off = line.nearestSoundingMetres;
  return {
    id,
    name,
    permitted,
    why: '',
    depth: {
      datumMetres: Math.round(depthMetres * 100) / 100,
      datum: shortDepth(depthMetres, units),
      otherUnit: formatLength(depthMetres, { length: units.length === 'm' ? 'ft' : 'm' }),
      today: levelMetres === null ? null : shortDepth(heavyMetres, units),
      todayOther: formatLength(now, { length: units.length === 'm' ? 'ft' : 'm' }),
      lightBait: shortDepth(lightMetres, units),
      known:
        off === null || off < 0.05 ? say('depth.plumbedHere') : say('depth.nearest', { off: nearness(off, units) }),
    },
  };
}

function whyNot(line: LineDepth, units: Units, say: Say): string {
  const why = noDepthWords(line.why, say);
  if (line.nearestSoundingMetres === null) return why;
  return `${why}, ${say('depth.nearest', { off: nearness(line.nearestSoundingMetres, units) })}`;
}

function nearness(metres: number, units: Units): string {
  return units.length === 'm' ? formatLength(metres, units, metres < 10 ? 1 : 0) : formatLength(metres, units);
}

function levelWords(metres: number, day: string, units: Units, say: Say): string {
  const off = formatLength(Math.abs(metres), units);
  const where =
    Math.abs(metres) < 0.005
      ? say('depth.atDatum')
      : say(metres > 0 ? 'depth.aboveDatum' : 'depth.belowDatum', { off });
  return say('depth.gauge', { day, where });
}

function drawingOf(survey: PegSurvey, units: Units, levelMetres: number | null, poleMetres: number): DepthSection {
  const deepest = Math.max(...survey.profile.map(({ depthMetres }) => depthMetres ?? 0));
  return {
    levelMetres,
    poleMetres,
    poleJointsMetres: POLE_JOINTS_METRES,
    bed: survey.profile,
    lines: survey.lineDepths
      .filter(({ why }) => why !== 'short' && why !== 'beyond')
      .map(({ distanceMetres, depthMetres }) => ({
        distanceMetres,
        depthMetres,
        distanceWords: distanceMetres < 0.95 ? distanceMetres.toFixed(1) : String(Math.round(distanceMetres)),
        depthWords: depthMetres === null ? '' : shortDepth(depthMetres, units),
      })),
    depthMarks: depthMarks(deepest, units),
    landWords: landStretches(survey).map(({ from, to, words }) => ({ distanceMetres: (from + to) / 2, words })),
  };
}

/** The drawing's text alternative: land and unplumbed stretches; the depths stand in the table below it. */
function sectionWords(survey: PegSurvey): string {
  const isPlumbed = survey.lineDepths.some(({ depthMetres }) => depthMetres !== null);
  const land = landStretches(survey).map(({ from, to, words }) =>
    to - from < 1 ? `${words} at ${Math.round(from)} m` : `${words} from ${Math.round(from)} to ${Math.round(to)} m`,
  );
  const blind = unplumbedStretches(survey.profile).map(
    ([from, to]) => `not plumbed from ${Math.round(from)} to ${Math.round(to)} m`,
  );
  const told = [...(isPlumbed ? ['depths in the table below'] : []), ...land, ...blind];
  return `Section out from the peg: ${told.length === 0 ? 'nothing known' : told.join(', ')}.`;
}
