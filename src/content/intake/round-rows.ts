import { CLEARANCE_MEASURES } from '../../domain/clearance-measures.ts';
import type { Day } from '../../domain/day.ts';
import type {
  Fix,
  HazardFinding,
  NoticeFinding,
  PegFinding,
  PlaceFinding,
  RoundFile,
} from '../round-file/round-file.ts';
import { ROUND_COLUMNS, type RoundColumn, USUAL_ROUND_COLUMNS } from '../schemas/round-schema.ts';
import { csvLine } from './csv-line.ts';
import { lengthText } from './length-text.ts';
import { daySeen } from './merge-peg.ts';

const USUAL: ReadonlySet<RoundColumn> = new Set(USUAL_ROUND_COLUMNS);

type Row = Partial<Record<RoundColumn, string>>;

/** The round as the folder keeps it: a `visit` row for each peg, and a row more for each finding. */
export function roundCsv(round: RoundFile, lengthUnit: 'm' | 'ft'): string {
  const rows = [
    ...round.pegs.flatMap((finding) => pegRows(finding, round, lengthUnit)),
    ...(round.places ?? []).flatMap((finding) => placeRows(finding, round.day)),
    ...(round.notices ?? []).flatMap((notice) => noticeRows(notice, round.day)),
    ...round.gauges.map(
      ({ water, levelMetres, waterDegreesC, day }): Row => ({
        entry: 'gauge',
        water,
        ...(levelMetres === undefined ? {} : { level: lengthText(levelMetres, lengthUnit) }),
        ...(waterDegreesC === undefined ? {} : { water_temperature: String(waterDegreesC) }),
        ...onDay(day ?? round.day, round.day),
      }),
    ),
  ].map((row): Row => (round.by === undefined ? row : { ...row, by: row.by ?? round.by }));
  const columns = ROUND_COLUMNS.filter((column) => USUAL.has(column) || rows.some((row) => row[column] !== undefined));
  const lines = rows.map((row) => csvLine(columns.map((column) => row[column] ?? '')));
  return `${[columns.join(','), ...lines].join('\n')}\n`;
}

function pegRows(finding: PegFinding, round: RoundFile, unit: 'm' | 'ft'): Row[] {
  const { water, peg } = finding;
  const first = finding.day ?? round.day;
  const inspectedOn = daySeen(finding, 'platform', round.day);
  const row = (entry: string, day: Day, fields: Row): Row => ({
    entry,
    water,
    peg,
    ...fields,
    ...onDay(day, round.day),
  });
  const rows: Row[] = [
    row('visit', first, {
      ...(finding.status === undefined ? {} : { status: finding.status }),
      ...(finding.platform === undefined || inspectedOn !== first ? {} : { platform: finding.platform }),
      ...(finding.until === undefined ? {} : { until: finding.until }),
      ...position(finding.at),
      note: visitNote(finding),
    }),
  ];
  if (finding.platform !== undefined && inspectedOn !== first) {
    rows.push(row('inspected', inspectedOn, { platform: finding.platform }));
  }
  for (const hazard of finding.hazards)
    rows.push(row(`hazard-${hazard.did}`, hazard.day ?? first, hazardCells(hazard)));
  const byDay = new Map<Day, Row>();
  for (const { column, field } of CLEARANCE_MEASURES) {
    const metres = finding[field];
    if (metres === undefined) continue;
    const day = daySeen(finding, field, round.day);
    byDay.set(day, { ...byDay.get(day), [column]: lengthText(metres, unit) });
  }
  for (const [day, cells] of byDay) rows.push(row('clearance', day, cells));
  if (finding.snagRemoved === true) rows.push(row('snag-removed', daySeen(finding, 'snagRemoved', round.day), {}));
  if (finding.cut === true) rows.push(row('cut', daySeen(finding, 'cut', round.day), {}));
  if (finding.lineDistanceMetres !== undefined) {
    const day = daySeen(finding, 'lineDistanceMetres', round.day);
    rows.push(row('line-distance', day, { line_distance: lengthText(finding.lineDistanceMetres, unit) }));
  }
  return rows;
}

/** What was found at a place that is no peg; the water itself where it has no place. */
function placeRows(finding: PlaceFinding, roundDay: Day): Row[] {
  const { water, place, kit, closing, note } = finding;
  const day = finding.day ?? roundDay;
  const row = (entry: string, fields: Row, on = day): Row => ({
    entry,
    water,
    ...(place === undefined ? {} : { mapped_as: place }),
    ...fields,
    ...onDay(on, roundDay),
  });
  return [
    ...(kit === undefined ? [] : [row('kit-checked', { kit })]),
    ...finding.hazards.map((hazard) => row(`hazard-${hazard.did}`, hazardCells(hazard), hazard.day ?? day)),
    ...(closing === undefined
      ? []
      : [row('closing', { why: closing.reason, ...(closing.until === undefined ? {} : { until: closing.until }) })]),
    ...(note === undefined ? [] : [row('note', { note })]),
  ];
}

function noticeRows({ water, pegs, title, text, until, day }: NoticeFinding, roundDay: Day): Row[] {
  const cells = {
    title,
    ...(text === undefined ? {} : { note: text }),
    ...(until === undefined ? {} : { until }),
    ...onDay(day ?? roundDay, roundDay),
  };
  const of = (peg?: string): Row => ({ entry: 'notice', water, ...(peg === undefined ? {} : { peg }), ...cells });
  return pegs.length === 0 ? [of()] : pegs.map(of);
}

function hazardCells(hazard: HazardFinding): Row {
  const { kind, place, severity, likelihood } = hazard;
  const cells = { hazard: kind, place, severity: String(severity), likelihood: String(likelihood) };
  if (hazard.did === 'found') return { ...cells, action: hazard.action ?? '', ...position(hazard.at) };
  const { control, severityAfter, likelihoodAfter, by, why } = hazard;
  return {
    ...cells,
    ...(control === undefined ? {} : { control }),
    ...(severityAfter === undefined ? {} : { severity_after: String(severityAfter) }),
    ...(likelihoodAfter === undefined ? {} : { likelihood_after: String(likelihoodAfter) }),
    ...(by === undefined ? {} : { by }),
    ...(why === undefined ? {} : { why }),
  };
}

/** A day is written where it is not the round's own. */
function onDay(day: Day, roundDay: Day): Row {
  return day === roundDay ? {} : { day };
}

function visitNote({ status, reason, note }: PegFinding): string {
  const closed = status === 'closed' && reason !== undefined ? [`Closed: ${reason}`] : [];
  return [...closed, ...(note === undefined ? [] : [note])].join('\n');
}

function position(at: Fix | undefined): Row {
  if (at === undefined) return {};
  const place = { lat: at.lat.toFixed(6), lng: at.lng.toFixed(6) };
  return at.accuracyMetres === undefined ? place : { ...place, accuracy: `${Math.round(at.accuracyMetres)} m` };
}
