import { formatDay } from '../domain/day.ts';
import type { Check } from '../domain/due.ts';
import { type Hazard, isCurrent } from '../domain/hazard.ts';
import { hazardCheck } from '../domain/hazard-check.ts';
import {
  lineDistanceWords,
  lineHeightWords,
  lineNameWords,
  reachLimitWords,
  standOffWords,
} from '../domain/overhead-line-words.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { hazardsOfWholeWater, isUnsafePlatform } from '../domain/peg-facts.ts';
import type { KeptOpen, LineFact } from '../domain/peg-verdict.ts';
import { compassWords } from '../domain/place-words.ts';
import { compareByUrgency, hazardKind, riskOf } from '../domain/risk.ts';
import type { VenueSettings } from '../domain/venue.ts';
import { isCurrentLine, namesLine } from '../ground/lines-of-peg.ts';
import { countsMetres, needsMeasuredDistance } from '../ground/stand-off.ts';
import type { LineStandOff, PegSurvey } from '../ground/survey.ts';
import { effectiveReach } from '../ground/swept-area.ts';
import { type Atlas, surveyOfPeg, waterOf } from './atlas.ts';
import { WAY_UNDER_LINE_ACTION } from './peg-bank.ts';
import { findingsForPeg } from './place-findings.ts';

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
  const inForce = peg.hazards.filter(isCurrent);
  const lines = survey.standOffs.filter((line) => line.platformMetres < LINE_WITHIN_METRES || line.verdict !== 'clear');
  // A record that names a line of the map is one thing with it: told once, at that line. Any other is a line of its own.
  const recordOf = ({ line, name }: LineStandOff) =>
    inForce.find((hazard) => isCurrentLine(hazard) && namesLine(hazard, { id: line, name }));
  const told = new Set(lines.map(recordOf));
  const unmapped = survey.lines.filter(({ source }) => source !== 'map');
  const others = inForce.filter((hazard) => !told.has(hazard) && !isCurrentLine(hazard));
  const hazards = [...others, ...hazardsOfWholeWater(waterOf(atlas, peg.water))]
    .map((hazard) => ({ hazard, risk: riskOf(hazard, settings.riskBands) }))
    .sort((a, b) => compareByUrgency(a.risk, b.risk))
    .map(({ hazard }) => hazardEntry(hazard, settings));
  const far = inForce.filter((hazard) => isCurrentLine(hazard) && !told.has(hazard) && !isAmong(hazard, unmapped));
  return [
    ...unmapped.map((line) => unmappedEntry(line, peg, inForce, settings)),
    ...lines.map((line) => lineEntry(line, peg, settings, recordOf(line))),
    ...platformEntries(peg),
    ...limitEntries(peg, settings, lines.length + unmapped.length > 0),
    ...wayEntries(survey),
    ...findingsForPeg(atlas.venue, peg, survey).map(({ hazard, where }) => ({
      ...hazardEntry(hazard, settings),
      title: `${hazardKind(hazard.kind).name}: ${where}, ${hazard.place}`,
    })),
    ...far.map((hazard) => hazardEntry(hazard, settings)),
    ...hazards,
  ];
}

function isAmong(hazard: Hazard, lines: readonly LineFact[]): boolean {
  return lines.some(({ source, name }) => source === 'record' && name === hazard.place);
}

function lineEntry(line: LineStandOff, peg: Peg, settings: VenueSettings, record: Hazard | undefined): SafetyEntry {
  const { units } = settings;
  const distance = (metres: number) => lineDistanceWords(metres, units);
  const tape = needsMeasuredDistance(peg, [line]) ? ' Not measured yet: have it measured before it is relied on.' : '';
  const height = lineHeightWords(line, units);
  const kind = hazardKind('overhead-line');
  return {
    sign: kind.sign,
    title: `Overhead line ${distance(line.mappedMetres)} to the ${compassWords(line.bearingDegrees)}${insideWords(line, settings)}`,
    action: `${nearnessWords(countsMetres(line), settings)}${tape} ${record?.action ?? kind.advice}`,
    control: record?.control ?? null,
    facts: [
      lineNameWords(line),
      ...(height === null ? [] : [height]),
      ...measuredFacts(peg, settings),
      ...(record === undefined ? [] : [`found ${formatDay(record.foundOn)}`]),
    ],
    check: record === undefined ? null : checkOfHazard(record, settings),
  };
}

/** Beside the distance to the platform, what makes a line too near all the same; empty where it is not. */
function insideWords(line: LineStandOff, { standOff, units }: VenueSettings): string {
  const metres = countsMetres(line);
  if (metres >= standOff.metres) return '';
  const least = standOffWords(standOff.metres, units);
  return line.platformMetres < standOff.metres
    ? `, inside the ${least} to keep`
    : `: pole or cast from here comes inside ${least}`;
}

/** A line that no map shows: in the bailiff's own words, or as it was measured. */
function unmappedEntry(line: LineFact, peg: Peg, inForce: readonly Hazard[], settings: VenueSettings): SafetyEntry {
  const record = inForce.find((hazard) => isCurrentLine(hazard) && hazard.place === line.name);
  const kind = hazardKind('overhead-line');
  return {
    sign: kind.sign,
    title: `Overhead line: ${line.name}`,
    action: `${nearnessWords(line.metres, settings)} ${record?.action ?? kind.advice}`,
    control: record?.control ?? null,
    facts: [
      'not on the map',
      ...(line.source === 'measured' ? measuredFacts(peg, settings) : []),
      ...(record === undefined ? [] : [`found ${formatDay(record.foundOn)}`]),
    ],
    check: record === undefined ? null : checkOfHazard(record, settings),
  };
}

/** The distance to a line as it was measured, with its day and method; nothing where nobody measured. */
function measuredFacts({ measuredLineDistance: measured }: Peg, { units }: VenueSettings): readonly string[] {
  if (measured === undefined) return [];
  const distance = lineDistanceWords(measured.distanceMetres, units);
  return [`measured ${distance} on ${formatDay(measured.measuredOn)} (${measured.method})`];
}

/** How near what may be swept comes to a line: a figure or that there is none, never that a peg is clear. */
function nearnessWords(metres: number | null, { standOff, units }: VenueSettings): string {
  const least = standOffWords(standOff.metres, units);
  if (metres === null)
    return `Nobody has measured how near it is, so it counts as inside the ${least}: do not fish here.`;
  if (metres < standOff.metres) {
    return `This peg, or what is swept from it, comes within the stand-off of ${least}: do not fish here.`;
  }
  return `Pole and cast within the rules stay ${lineDistanceWords(metres, units)} off, allowances taken; ${least} is the least.`;
}

/** A platform whose record says that it must not be used. */
function platformEntries({ platform }: Peg): readonly SafetyEntry[] {
  if (!isUnsafePlatform(platform)) return [];
  const kind = hazardKind('unsafe-platform');
  const { condition = '', inspectedOn, keptOpen } = platform ?? {};
  const facts = [
    condition,
    ...(inspectedOn === undefined ? [] : [`looked at ${formatDay(inspectedOn)}`]),
    ...keptOpenWords(keptOpen),
  ];
  return [{ sign: kind.sign, title: kind.name, action: kind.advice, control: null, facts, check: null }];
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

/** One entry where no way to the peg is clear of every line. Where one is, it is told first and the others beside it. */
function wayEntries({ walks }: PegSurvey): readonly SafetyEntry[] {
  const ways = walks.filter(({ underLines }) => underLines.length > 0);
  if (ways.length === 0 || ways.length < walks.length) return [];
  return [
    {
      sign: 'W012',
      title: `The way from every car park passes an overhead line`,
      action: WAY_UNDER_LINE_ACTION,
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
    facts: [`found ${formatDay(hazard.foundOn)}`, ...keptOpenWords(hazard.keptOpen)],
    check: checkOfHazard(hazard, settings),
  };
}

/** Why a peg stays in the draw in spite of a hazard that would close it. */
function keptOpenWords(keptOpen: KeptOpen | undefined): readonly string[] {
  return keptOpen === undefined ? [] : [`kept open ${formatDay(keptOpen.on)} by role ${keptOpen.by}: ${keptOpen.why}`];
}

function checkOfHazard(hazard: Hazard, settings: VenueSettings): Check {
  return hazardCheck(hazard, settings.inspection);
}
