import { DOMParser, type Element } from '@xmldom/xmldom';
import { type Day, isDay } from '../../../domain/day.ts';
import { parseLength } from '../../../domain/length.ts';
import { headingWords } from '../headings.ts';
import { MAX_PAPER_BYTES } from '../paper.ts';
import { pegIn } from '../results/read-block.ts';
import type { Unread } from '../results/result-row.ts';
import { dayInTitle } from '../results/title-facts.ts';
import { splitTable } from '../split-table.ts';
import { decodedText } from '../text-encoding.ts';
import type { DepthLog, LoggedDepth } from './depth-log.ts';
import { isNmea, readNmea } from './read-nmea.ts';

/**
 * Reads depths as a finder, a phone or a plumb book gives them: NMEA 0183, GPX whose points carry a depth, a table with
 * latitude, longitude and depth, or a table of pegs by distances.
 * @throws RangeError with a sentence where the file is none of these
 */
export function readDepthLog(file: string, bytes: Uint8Array): DepthLog {
  if (bytes.length > MAX_PAPER_BYTES)
    throw new RangeError(`${file} is larger than ${MAX_PAPER_BYTES / 1024 / 1024} MB.`);
  const text = decodedText(bytes);
  if (isNmea(text)) return readNmea(file, text);
  if (text.trimStart().startsWith('<')) return readGpxDepths(file, text);
  return readDepthTable(file, text);
}

function readGpxDepths(file: string, text: string): DepthLog {
  if (/<!DOCTYPE/i.test(text))
    throw new RangeError(`${file} declares a document type, which no GPX needs: save it anew.`);
  let points: readonly Element[];
  try {
    const document = new DOMParser({ onError: () => {} }).parseFromString(text, 'text/xml');
    points = ['wpt', 'trkpt', 'rtept'].flatMap((name) => [...document.getElementsByTagName(name)]);
  } catch {
    throw new RangeError(`${file} is broken as XML.`);
  }
  const depths: LoggedDepth[] = [];
  let without = 0;
  for (const point of points) {
    const of = (pattern: RegExp): string | null =>
      [...point.getElementsByTagName('*')]
        .find(({ localName }) => pattern.test(localName ?? ''))
        ?.textContent?.trim() ?? null;
    const [lat, lng] = [Number(point.getAttribute('lat')), Number(point.getAttribute('lon'))];
    const depth = Number(of(/^(water)?depth$/i) ?? Number.NaN);
    if (!(depth > 0) || !Number.isFinite(lat) || !Number.isFinite(lng)) {
      without += 1;
      continue;
    }
    const day = of(/^time$/)?.slice(0, 10) ?? '';
    // Depths in GPX extensions are metres, as all of GPX 1.1 is.
    depths.push({ at: { lat, lng }, depth, unit: 'm', day: isDay(day) ? day : null });
  }
  if (depths.length === 0) throw new RangeError(`${file} holds no point with a depth.`);
  const unread = without === 0 ? [] : [{ place: file, what: `${without} points`, why: 'they carry no depth' }];
  return { file, depths, isBelowTransducer: false, unread };
}

const COLUMNS = {
  lat: /^(lat|latitude|y)\b/,
  lng: /^(lon|lng|long|longitude|x)\b/,
  depth: /\bdepth\b/,
  day: /^(date|day|time|date time|datetime|timestamp)\b/,
  peg: /^(peg|swim|peg no|peg number)$/,
} as const;
const DISTANCE = /^(\d{1,3}(?:\.\d{1,2})?)\s*(m|metres?|ft|feet)?$/i;

function readDepthTable(file: string, text: string): DepthLog {
  const rows = splitTable(text, (row) => isPositionHead(row) || isPegHead(row));
  const head = rows.findIndex((row) => isPositionHead(row) || isPegHead(row));
  if (head === -1) {
    throw new RangeError(
      `${file}: expected NMEA 0183, GPX, or a table: latitude, longitude and depth, or a peg and distances such as 2 m, 6 m, 13 m in the headings.`,
    );
  }
  const titled =
    rows
      .slice(0, head)
      .flatMap((row) => row.map(dayInTitle))
      .find((day) => day !== null) ?? null;
  const below = rows.slice(head + 1).map((row, index) => ({ row, place: `${file}, row ${head + index + 2}` }));
  const unread: Unread[] = [];
  const read = isPositionHead(rows[head]!) ? positionRows : pegRows;
  const depths = below.flatMap(({ row, place }) =>
    row.every((cell) => cell.trim() === '') ? [] : read(rows[head]!, row, place, titled, unread),
  );
  return { file, depths, isBelowTransducer: false, unread };
}

function column(row: readonly string[], pattern: RegExp): number {
  return row.findIndex((cell) => pattern.test(headingWords(cell)));
}

function isPositionHead(row: readonly string[]): boolean {
  return [COLUMNS.lat, COLUMNS.lng, COLUMNS.depth].every((pattern) => column(row, pattern) !== -1);
}

function isPegHead(row: readonly string[]): boolean {
  return column(row, COLUMNS.peg) !== -1 && row.some((cell) => DISTANCE.test(cell.trim()));
}

function positionRows(
  head: readonly string[],
  row: readonly string[],
  place: string,
  titled: Day | null,
  unread: Unread[],
): readonly LoggedDepth[] {
  const cell = (pattern: RegExp): string => row[column(head, pattern)]?.trim() ?? '';
  const [lat, lng] = [COLUMNS.lat, COLUMNS.lng].map((pattern) => Number(cell(pattern).replace(',', '.'))) as [
    number,
    number,
  ];
  const depth = depthIn(cell(COLUMNS.depth), unitIn(head[column(head, COLUMNS.depth)] ?? ''));
  if (depth === null || !Number.isFinite(lat) || !Number.isFinite(lng) || Math.abs(lat) > 90 || Math.abs(lng) > 180) {
    unread.push({ place, what: 'a depth', why: 'its position or depth cannot be read' });
    return [];
  }
  return [{ at: { lat, lng }, ...depth, day: dayInTitle(cell(COLUMNS.day)) ?? titled }];
}

function pegRows(
  head: readonly string[],
  row: readonly string[],
  place: string,
  titled: Day | null,
  unread: Unread[],
): readonly LoggedDepth[] {
  const peg = pegIn(row[column(head, COLUMNS.peg)] ?? '');
  if (peg === null) {
    unread.push({ place, what: 'a row', why: 'no peg in it' });
    return [];
  }
  const day = dayInTitle(row[column(head, COLUMNS.day)] ?? '') ?? titled;
  return head.flatMap((heading, index): readonly LoggedDepth[] => {
    const distance = DISTANCE.exec(heading.trim());
    const written = row[index]?.trim() ?? '';
    if (distance === null || written === '' || written === '-') return [];
    const metres = parseLength(`${distance[1]} ${/^f/i.test(distance[2] ?? '') ? 'ft' : 'm'}`, 'm');
    const depth = depthIn(written, null);
    if (depth === null || !metres.ok) {
      unread.push({ place, what: `the depth at ${heading.trim()}`, why: `"${written}" is no depth` });
      return [];
    }
    return [{ at: { peg, distanceMetres: metres.value }, ...depth, day }];
  });
}

function unitIn(heading: string): 'm' | 'ft' | null {
  if (/\b(ft|feet|foot)\b/i.test(heading)) return 'ft';
  return /\b(m|metres?|meters?)\b/i.test(heading) ? 'm' : null;
}

/** A depth with its unit where it says one; `4ft6` and `1.4` are both met. */
function depthIn(written: string, unit: 'm' | 'ft' | null): Pick<LoggedDepth, 'depth' | 'unit'> | null {
  // 1,2 is what many a spreadsheet makes of 1.2; three figures behind a comma may be thousands.
  const plain = written.replace(/^(\d+),(\d{1,2})(?!\d)/, '$1.$2');
  if (/^\d+(\.\d+)?$/.test(plain)) return Number(plain) > 0 ? { depth: Number(plain), unit } : null;
  const spelt = plain.replace(/^(\d+)\s*ft\s*(\d+)$/i, '$1 ft $2 in');
  const length = parseLength(spelt, 'm');
  return length.ok && length.value > 0 ? { depth: length.value, unit: 'm' } : null;
}
