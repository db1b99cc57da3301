import { StagedFiles } from '../content/intake/staged-files.ts';
import { askWater } from '../content/new-venue/ask-venue-plan.ts';
import { pegNumbers } from '../content/new-venue/peg-numbers.ts';
import { LINE_NOT_DRAWN, pegRecord, waterFiles } from '../content/new-venue/plan-files.ts';
import { sketchWater } from '../content/new-venue/sketch-water.ts';
import type { LinesPlan, WaterPlan } from '../content/new-venue/venue-plan.ts';
import { waterSlug } from '../content/papers/places/settle-places.ts';
import { parseBearing } from '../domain/compass.ts';
import { countWords } from '../domain/count-words.ts';
import type { LatLng } from '../domain/place.ts';
import { parseGridReference } from '../ground/national-grid.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { answerFileOf, readAnswers } from './import/answer-file.ts';
import { refuse } from './import/ask-to-write.ts';
import { finishImport } from './import/finish-import.ts';
import { FolderImport } from './import/folder-import.ts';
import { settleQuestions } from './import/settle-questions.ts';
import { typedFor } from './print-faults.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { venueFolder } from './venue-folder.ts';

/** Where pegs are closed because a line is known and not drawn, those that come later are closed too. */
function linesOf({ content }: FolderImport): LinesPlan {
  const isKnown = content.pegs.some(({ value }) => value.statusReason === LINE_NOT_DRAWN);
  return { state: isKnown ? 'known' : 'not-looked' };
}

/**
 * `add water NAME [--pegs 1-24]` and `add peg WATER NUMBERS [--at POSITION] [--facing BEARING]`: more of what `start` wrote, all or nothing. A
 * peg without a position is a placeholder, which a real venue's check refuses until it is placed.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args,
    {
      venue: { type: 'string' },
      answers: { type: 'string' },
      pegs: { type: 'string' },
      at: { type: 'string' },
      facing: { type: 'string' },
      yes: { type: 'boolean' },
    },
    true,
  );
  const [kind, ...words] = positionals;
  const folder = venueFolder(values.venue, io.environment);
  const open = await FolderImport.open(folder);
  if (!open.ok) return refuse(open.lines, io);
  const venue = open.folder;
  const { content } = venue;
  const answerPath = answerFileOf(folder, values.answers ?? null);
  const staged = new StagedFiles(venue.files);
  let { answers } = { answers: readAnswers(answerPath) };
  let said: string;
  if (kind === 'water' && words.length > 0) {
    const name = words.join(' ');
    const settled = await waterPlan(name, values.pegs, answers, answerPath, io);
    if (settled === null) return EXIT.faults;
    answers = settled.answers;
    if (content.known.waters.has(settled.water.id)) {
      return refuse([`There is a water called ${settled.water.id} already: add pegs to it with add peg.`], io);
    }
    for (const [path, text] of waterFiles(
      settled.water,
      content.waters.length,
      linesOf(venue),
      content.settings.guideDay,
    ))
      staged.put(path, text);
    said = `${settled.water.name}, as a plain box: ${countWords(settled.water.pegs.length, 'peg')}`;
  } else if (kind === 'peg' && words.length > 1) {
    const [water = '', ...numbers] = words;
    const pegs = pegNumbers(numbers.map((number) => (/^\d+$/.test(number) ? `${number}-${number}` : number)).join(','));
    if (!content.known.waters.has(water)) {
      return refuse([`There is no water "${water}". Those there are: ${[...content.known.waters].join(', ')}.`], io);
    }
    if (pegs === null)
      throw new UsageError(`Unexpected "${numbers.join(' ')}", expected pegs such as 25, 26-28 or 14a.`);
    const at = values.at === undefined ? null : positionOf(values.at);
    if (values.at !== undefined && (at === null || pegs.length > 1)) {
      throw new UsageError(
        `Unexpected --at "${values.at}", expected one peg and 52.75126,-0.05481 or a grid reference such as "TF 3127 1880".`,
      );
    }
    const facing = values.facing ?? null;
    if (facing !== null && (pegs.length > 1 || !parseBearing(facing).ok)) {
      throw new UsageError(`Unexpected --facing "${facing}", expected one peg and degrees from true north or NNE.`);
    }
    const there = pegs.filter((peg) => staged.text(`pegs/${water}/${peg}.md`) !== null);
    if (there.length > 0) return refuse([`${water} has ${there.join(', ')} already.`], io);
    if (at === null && !isSketch(venue, water)) {
      return refuse([`${water} is on the map: say where the peg is with --at, or import its place.`], io);
    }
    for (const [path, text] of pegFiles(venue, water, pegs, at, facing)) staged.put(path, text);
    said = `${water}: ${countWords(pegs.length, 'new peg')} (${pegs.join(', ')})`;
  } else {
    throw new UsageError('Expected add water NAME or add peg WATER NUMBERS.');
  }
  io.print(said);
  return finishImport(
    venue,
    {
      changed: staged.changed(),
      answers,
      answerPath,
      isAgreed: values.yes === true,
      nothingNew: 'There is nothing new in this',
      done: `Added. Where they are comes with ${typedFor('import places FILE', folder)}, or is written into position in each record.`,
    },
    io,
  );
}

async function waterPlan(
  name: string,
  pegs: string | undefined,
  kept: ReturnType<typeof readAnswers>,
  answerPath: string,
  io: CommandIo,
) {
  if (pegs !== undefined) {
    const numbers = pegNumbers(pegs);
    if (numbers === null) throw new UsageError(`Unexpected --pegs "${pegs}", expected how many, or 1-20, 22, 24a.`);
    const water: WaterPlan = { id: waterSlug(name), name, pegs: numbers };
    return { water, answers: kept };
  }
  const settled = await settleQuestions((asker) => askWater(name, asker), kept, answerPath, false, io);
  return settled?.reading == null ? null : { water: settled.reading, answers: settled.answers };
}

/** Whether the pegs of a water stand in for themselves, or it has none. */
function isSketch({ content }: FolderImport, water: string): boolean {
  const pegs = content.pegs.filter(({ value }) => value.water === water);
  return pegs.every(({ source }) => source.writtenAt(['position', 'placeholder']) === 'true');
}

function pegFiles(
  venue: FolderImport,
  water: string,
  pegs: readonly string[],
  at: LatLng | null,
  facing: string | null,
): readonly (readonly [string, string])[] {
  const { waters, pegs: known, settings } = venue.content;
  const index = waters.findIndex(({ id }) => id === water);
  const there = known.filter(({ value }) => value.water === water).length;
  return sketchWater(pegs, Math.max(0, index)).pegs.map((sketched) => {
    // A few steps along, so that no two placeholders share a place.
    const place = at ?? { lat: sketched.at.lat, lng: Number((sketched.at.lng + ((there % 6) + 1) * 2e-5).toFixed(6)) };
    const position = `{ lat: ${place.lat}, lng: ${place.lng}${at === null ? ', placeholder: true' : ''} }`;
    const text = pegRecord(water, sketched.peg, position, linesOf(venue), settings.guideDay, facing);
    return [`pegs/${water}/${sketched.peg}.md`, text];
  });
}

function positionOf(text: string): LatLng | null {
  const [, lat, lng] = /^\s*([-−]?\d{1,2}(?:\.\d+)?)[\s,]+([-−]?\d{1,3}(?:\.\d+)?)\s*$/.exec(text) ?? [];
  if (lat !== undefined && lng !== undefined) {
    const [north, east] = [lat, lng].map((degrees) => Number(degrees.replace('−', '-')));
    return Math.abs(east!) <= 180 ? { lat: north!, lng: east! } : null;
  }
  return parseGridReference(text.toUpperCase());
}
