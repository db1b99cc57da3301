import { ROUND_COLUMNS } from '../round-columns.ts';
import type { PegFinding, RoundFile } from '../round-file/round-file.ts';
import { csvLine } from './csv-line.ts';
import { lengthText } from './length-text.ts';

type Row = Partial<Record<(typeof ROUND_COLUMNS)[number], string>>;

/** The round as the folder keeps it: a `visit` row for each peg, and a row more for each finding. */
export function roundCsv(round: RoundFile, lengthUnit: 'm' | 'ft'): string {
  const rows = [
    ...round.pegs.flatMap((finding) => pegRows(finding, lengthUnit)),
    ...round.gauges.map(
      ({ water, levelMetres, waterDegreesC }): Row => ({
        entry: 'gauge',
        water,
        ...(levelMetres === undefined ? {} : { level: lengthText(levelMetres, lengthUnit) }),
        ...(waterDegreesC === undefined ? {} : { water_temperature: String(waterDegreesC) }),
      }),
    ),
  ];
  const lines = rows.map((row) => csvLine(ROUND_COLUMNS.map((column) => row[column] ?? '')));
  return `${[ROUND_COLUMNS.join(','), ...lines].join('\n')}\n`;
}

function pegRows(finding: PegFinding, unit: 'm' | 'ft'): Row[] {
  const { water, peg } = finding;
  const length = (column: keyof Row, metres: number | undefined): Row =>
    metres === undefined ? {} : { [column]: lengthText(metres, unit) };
  const row = (entry: string, fields: Row): Row => ({ entry, water, peg, ...fields });
  const rows: Row[] = [
    row('visit', {
      ...(finding.status === undefined ? {} : { status: finding.status }),
      ...(finding.platform === undefined ? {} : { platform: finding.platform }),
      ...position(finding.at),
      note: visitNote(finding),
    }),
  ];
  for (const hazard of finding.hazards) {
    rows.push(
      row(`hazard-${hazard.did}`, {
        hazard: hazard.kind,
        place: hazard.place,
        severity: String(hazard.severity),
        likelihood: String(hazard.likelihood),
        ...(hazard.did === 'found' ? { action: hazard.action ?? '', ...position(hazard.at) } : {}),
      }),
    );
  }
  const clearance = {
    ...length('clear_width', finding.clearWidthMetres),
    ...length('lowest_branch', finding.lowestBranchMetres),
    ...length('path_width', finding.pathWidthMetres),
  };
  if (Object.keys(clearance).length > 0) rows.push(row('clearance', clearance));
  if (finding.snagRemoved === true) rows.push(row('snag-removed', {}));
  if (finding.cut === true) rows.push(row('cut', {}));
  if (finding.lineDistanceMetres !== undefined) {
    rows.push(row('line-distance', length('line_distance', finding.lineDistanceMetres)));
  }
  return rows;
}

function visitNote({ status, reason, note }: PegFinding): string {
  const closed = status === 'closed' && reason !== undefined ? [`Closed: ${reason}`] : [];
  return [...closed, ...(note === undefined ? [] : [note])].join('\n');
}

function position(at: { readonly lat: number; readonly lng: number } | undefined): Row {
  return at === undefined ? {} : { lat: at.lat.toFixed(6), lng: at.lng.toFixed(6) };
}
