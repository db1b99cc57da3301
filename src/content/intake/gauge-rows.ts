import { parse } from 'csv-parse/sync';
import type { Day } from '../../domain/day.ts';
import type { GaugeFinding } from '../round-file/round-file.ts';
import { lineBreak } from '../yaml-edit/yaml-place.ts';
import { csvLine } from './csv-line.ts';
import { lengthText } from './length-text.ts';

const HEADER = 'date,level,water_temperature';

/** A gauge file that lacks a column the reading needs. */
export class GaugeColumnMissing extends Error {}

/**
 * Adds a reading to the text of `gauge/<water>.csv`, in the file's own order of columns. A reading that is there already
 * is not added again.
 * @param text the file, null where there is none yet
 * @returns the new text, or null where nothing is new
 * @throws GaugeColumnMissing with a sentence for a person
 */
export function addReading(text: string | null, day: Day, reading: GaugeFinding, unit: 'm' | 'ft'): string | null {
  const before = text === null || text.trim() === '' ? `${HEADER}\n` : text;
  const rows: string[][] = parse(before, {
    bom: true,
    relax_column_count: true,
    record_delimiter: ['\r\n', '\n', '\r'],
  });
  const columns = (rows[0] ?? []).map((name) => name.trim());
  const values: Readonly<Record<string, string>> = {
    date: day,
    level: reading.levelMetres === undefined ? '' : lengthText(reading.levelMetres, unit),
    water_temperature: reading.waterDegreesC === undefined ? '' : String(reading.waterDegreesC),
  };
  const missing = Object.keys(values).find((name) => values[name] !== '' && !columns.includes(name));
  if (missing !== undefined) throw new GaugeColumnMissing(`its first line has no column ${missing}`);
  const line = columns.map((name) => values[name] ?? '');
  if (rows.some((row) => row.length === line.length && row.every((value, index) => value.trim() === line[index])))
    return null;
  const end = before.endsWith('\n') ? '' : lineBreak(before);
  return `${before}${end}${csvLine(line)}${lineBreak(before)}`;
}
