import { basename } from 'node:path';
import type { StagedFiles } from '../../content/intake/staged-files.ts';
import { LogTable } from '../../content/papers/log-table.ts';
import { readDepthLog } from '../../content/papers/soundings/read-depth-log.ts';
import {
  type SettledSounding,
  type SettledSoundings,
  type SoundingsWater,
  settleSoundings,
} from '../../content/papers/soundings/settle-soundings.ts';
import { SOUNDING_COLUMNS, soundingRow } from '../../content/papers/soundings/sounding-row.ts';
import { countWords } from '../../domain/count-words.ts';
import type { CommandIo } from '../command-io.ts';
import { jsonText } from '../json-text.ts';
import { fileBytes } from './file-bytes.ts';
import type { FolderImport } from './folder-import.ts';
import { unreadLines } from './results-summary.ts';
import { takingPapers } from './take-papers.ts';

/** `import soundings FILE…`: depths from a finder, a phone or a plumb book. */
export const importSoundings = takingPapers((options, io) => ({
  read: (file) => readDepthLog(file === '-' ? 'pasted' : basename(file), fileBytes(file)),
  settle: (logs, venue, asker) => {
    const waters = watersOf(venue);
    return logs.map((log) => settleSoundings(log, waters, asker));
  },
  stage: (settled, staged) => {
    const added = addSoundings(
      settled.flatMap(({ soundings }) => soundings),
      staged,
    );
    tell(added, settled, options.isJson, io);
  },
  next: 'Build the guide anew',
}));

function watersOf({ content }: FolderImport): readonly SoundingsWater[] {
  return content.waters.map(({ id, record, map }) => ({
    id,
    name: record?.value.name ?? id,
    shore: map === null ? null : map.map,
    pegs: new Map(content.pegs.flatMap(({ value }) => (value.water === id ? [[value.peg, value] as const] : []))),
    gaugeDays: content.gauge.flatMap(({ value }) => (value.water === id ? [value.day] : [])),
  }));
}

/** Adds what is not in the files yet; counts by water. */
function addSoundings(soundings: readonly SettledSounding[], files: StagedFiles): ReadonlyMap<string, number> {
  const added = new Map<string, number>();
  for (const water of new Set(soundings.map((sounding) => sounding.water))) {
    const path = `soundings/${water}.csv`;
    const table = new LogTable(files.text(path), SOUNDING_COLUMNS);
    table.need(SOUNDING_COLUMNS);
    const keyOf = (row: Readonly<Record<string, string>>): string => [row.lat, row.lng, row.depth, row.date].join(' ');
    const known = new Set(table.rows().map(keyOf));
    const rows = soundings
      .filter((sounding) => sounding.water === water)
      .map(soundingRow)
      .filter((row) => !known.has(keyOf(row)));
    if (rows.length > 0) {
      table.replace(() => false, rows);
      files.put(path, table.text());
    }
    added.set(water, rows.length);
  }
  return added;
}

function tell(
  added: ReadonlyMap<string, number>,
  settled: readonly SettledSoundings[],
  isJson: boolean,
  io: CommandIo,
): void {
  const unread = settled.flatMap((one) => one.unread);
  if (isJson) {
    io.print(jsonText({ added: Object.fromEntries(added), unread }));
    return;
  }
  for (const [water, count] of added) io.print(`soundings/${water}.csv: ${countWords(count, 'new sounding')}`);
  for (const line of unreadLines(unread)) io.printError(line);
}
