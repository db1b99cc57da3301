import { formatDay } from '../domain/day.ts';
import type { Check } from '../domain/due.ts';
import type { Hazard } from '../domain/hazard.ts';
import { hazardCheck } from '../domain/hazard-check.ts';
import {
  lineDistanceWords,
  lineHeightWords,
  lineNameWords,
  reachLimitWords,
  standOffWords,
} from '../domain/overhead-line-words.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { compassWords } from '../domain/place-words.ts';
import { compareByUrgency, hazardKind, riskOf } from '../domain/risk.ts';
import type { VenueSettings } from '../domain/venue.ts';
import { asksForTape, countsMetres } from '../ground/stand-off.ts';
import type { LineStandOff, PegSurvey } from '../ground/survey.ts';
import { effectiveReach } from '../ground/swept-area.ts';
import { type Atlas, surveyOfPeg } from './atlas.ts';

/** One entry of the safety box: a sign, what it is, what to do, what the club has done, how it is known. */
export interface SafetyEntry {
  /** ISO 7010 code. */
  readonly sign: string;
  readonly title: string;
  readonly action: string;
  readonly control: string | null;
  /** Facts that stand for any day: "11 kV", "found 2 Feb 2024". */
  readonly facts: readonly string[];
  /** When it was last looked at; null where it rests on the map alone. */
  readonly check: Check | null;
}

/** Lines farther than this are no part of a peg's own safety; the safety page lists every line. */
const LINE_WITHIN_METRES = 100;

/** What can hurt someone at a peg, most urgent first: overhead lines, limits, then hazards by rule and score. */
export function pegSafety(atlas: Atlas, peg: Peg): readonly SafetyEntry[] {
  const { settings } = atlas.venue;
  const survey = surveyOfPeg(atlas, pegKey(peg.water, peg.peg));
  const inForce = peg.hazards.filter(({ clearedOn }) => clearedOn === undefined);
  const lines = survey.standOffs.filter((line) => line.platformMetres < LINE_WITHIN_METRES || line.verdict !== 'clear');
  const lineRecord = inForce.find(({ kind }) => kind === 'overhead-line');
  // The record of a line and its distance are one thing: told once, at the nearest line.
  const others = lines.length > 0 ? inForce.filter((hazard) => hazard !== lineRecord) : inForce;
  const hazards = others
    .map((hazard) => ({ hazard, risk: riskOf(hazard, settings.riskBands) }))
    .sort((a, b) => compareByUrgency(a.risk, b.risk))
    .map(({ hazard }) => hazardEntry(hazard, settings));
  return [
    ...lines.map((line, index) => lineEntry(line, peg, settings, index === 0 ? lineRecord : undefined)),
    ...limitEntries(peg, settings, lines.length > 0),
    ...wayEntries(survey),
    ...hazards,
  ];
}

function lineEntry(line: LineStandOff, peg: Peg, settings: VenueSettings, record: Hazard | undefined): SafetyEntry {
  const { units } = settings;
  const distance = (metres: number) => lineDistanceWords(metres, units);
  const standOff = standOffWords(settings.standOff.metres, units);
  const measured = peg.measuredLineDistance;
  const allowed = `${distance(countsMetres(line))} from the line after allowances, stand-off ${standOff}`;
  const tape = asksForTape(peg, [line]) ? ' Not measured yet: have it measured before it is relied on.' : '';
  const height = lineHeightWords(line, units);
  const verdicts: Readonly<Record<LineStandOff['verdict'], string>> = {
    inside: `This peg, or what is swept from it, comes within the stand-off of ${standOff}: do not fish here.`,
    near: `Clear of it by little: what is swept from this peg comes to ${allowed}.${tape}`,
    clear: `This peg is clear of it: what is swept from here comes to ${allowed}.`,
  };
  const kind = hazardKind('overhead-line');
  return {
    sign: kind.sign,
    title: `Overhead line ${distance(line.mappedMetres)} to the ${compassWords(line.bearingDegrees)}`,
    action: `${verdicts[line.verdict]} ${record?.action ?? kind.advice}`,
    control: record?.control ?? null,
    facts: [
      lineNameWords(line),
      ...(height === null ? [] : [height]),
      ...(measured === undefined
        ? []
        : [`measured ${distance(measured.distanceMetres)} on ${formatDay(measured.measuredOn)} (${measured.method})`]),
      ...(record === undefined ? [] : [`found ${formatDay(record.foundOn)}`]),
    ],
    check: record === undefined ? null : checkOfHazard(record, settings),
  };
}

/** The limits that keep a peg open stand among its hazards: to go past them is one. */
function limitEntries(peg: Peg, settings: VenueSettings, nearLine: boolean): readonly SafetyEntry[] {
  const words = limitWords(peg, settings);
  if (words.length === 0) return [];
  return [
    {
      sign: nearLine ? 'W012' : 'W001',
      title: `Limits at this peg: ${words.join(', ')}`,
      action: 'The peg is open only within these limits.',
      control: null,
      facts: [],
      check: null,
    },
  ];
}

/** What the record allows less of than the venue: `pole to 11 m`, `no cast beyond 20 m`, `30° either side of straight ahead`. */
export function limitWords(
  peg: Pick<Peg, 'limits'>,
  settings: Pick<VenueSettings, 'permittedReach' | 'units'>,
): readonly string[] {
  const venue = settings.permittedReach;
  const reach = effectiveReach(peg, venue);
  const distance = (metres: number) => reachLimitWords(metres, settings.units);
  return [
    ...(reach.poleMetres < venue.poleMetres
      ? [reach.poleMetres === 0 ? 'no pole' : `pole to ${distance(reach.poleMetres)}`]
      : []),
    ...(reach.castMetres < venue.castMetres
      ? [reach.castMetres === 0 ? 'no casting' : `no cast beyond ${distance(reach.castMetres)}`]
      : []),
    ...(reach.sectorDegrees < venue.sectorDegrees ? [`${reach.sectorDegrees / 2}° either side of straight ahead`] : []),
  ];
}

/** One entry for all the ways that pass a line: what to do is the same on each. */
function wayEntries(survey: PegSurvey): readonly SafetyEntry[] {
  const ways = survey.walks.filter(({ underLines }) => underLines.length > 0);
  if (ways.length === 0) return [];
  const from = ways.length === survey.walks.length ? 'every car park' : ways.map((way) => way.from).join(', ');
  return [
    {
      sign: 'W012',
      title: `The way from ${from} passes an overhead line`,
      action:
        'Carry rods and poles low and level, taken down and in the bag. Set up and take down at the water’s edge.',
      control: null,
      facts: [...new Set(ways.flatMap(({ underLines }) => underLines))],
      check: null,
    },
  ];
}

function hazardEntry(hazard: Hazard, settings: VenueSettings): SafetyEntry {
  const kind = hazardKind(hazard.kind);
  return {
    sign: kind.sign,
    title: `${kind.name}: ${hazard.place}`,
    action: hazard.action ?? kind.advice,
    control: hazard.control ?? null,
    facts: [`found ${formatDay(hazard.foundOn)}`],
    check: checkOfHazard(hazard, settings),
  };
}

function checkOfHazard(hazard: Hazard, settings: VenueSettings): Check {
  return hazardCheck(hazard, settings.inspection);
}
