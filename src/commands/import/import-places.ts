import { basename } from 'node:path';
import type { Content } from '../../content/content.ts';
import { type PlaceChange, planPlaces } from '../../content/papers/places/plan-places.ts';
import { readDrawing } from '../../content/papers/places/read-drawing.ts';
import { type PlacesWater, settlePlaces } from '../../content/papers/places/settle-places.ts';
import type { Unread } from '../../content/papers/results/result-row.ts';
import { pegKey } from '../../domain/peg.ts';
import type { CommandIo } from '../command-io.ts';
import { jsonText } from '../json-text.ts';
import { fileBytes } from './file-bytes.ts';
import { unreadLines } from './results-summary.ts';
import { takingPapers } from './take-papers.ts';

/** `import places FILE…`: pegs and maps from a phone's points or a drawing. */
export const importPlaces = takingPapers((options, io) => ({
  read: (file) => readDrawing(basename(file), fileBytes(file)),
  settle: (drawings, { content }, asker) =>
    settlePlaces(
      drawings.flatMap(({ things }) => things),
      watersOf(content),
      asker,
    ),
  stage: (reading, staged, drawings, { content }) => {
    const positions = new Map(content.pegs.map(({ value }) => [pegKey(value.water, value.peg), value.at]));
    const changes = planPlaces(reading, (water, peg) => positions.get(pegKey(water, peg)), staged);
    tell(changes, [...drawings.flatMap(({ unread }) => unread), ...reading.unread], options.isJson, io);
  },
  next: 'Look at the map before you publish',
}));

function watersOf({ waters }: Content): readonly PlacesWater[] {
  return waters.map(({ id, record, map }) => ({
    id,
    name: record?.value.name ?? id,
    shore: map === null ? null : map.map,
    isNew: false,
  }));
}

function tell(changes: readonly PlaceChange[], unread: readonly Unread[], isJson: boolean, io: CommandIo): void {
  if (isJson) {
    io.print(jsonText({ changes, unread }));
    return;
  }
  for (const { what, words } of changes) io.print(`${what}: ${words}`);
  for (const line of unreadLines(unread)) io.printError(line);
}
