import { basename } from 'node:path';
import { makeAtlas } from '../atlas/atlas.ts';
import { judgePlan, type MatchPlan, planMatch } from '../atlas/match-plan.ts';
import { type MendedPlan, mendPlan } from '../atlas/mend-plan.ts';
import { NO_RATINGS } from '../atlas/no-ratings.ts';
import type { NewFile } from '../content/folder-change/commit-change.ts';
import { tidyFolder } from '../content/folder-change/commit-change.ts';
import { readSettled } from '../content/folder-change/read-settled.ts';
import { whyNotWritten, writeChange } from '../content/folder-change/write-change.ts';
import { formatFaults } from '../content/format-fault.ts';
import { errorsOf, withChanges } from '../content/intake/faults-after.ts';
import { readFolder } from '../content/read-folder.ts';
import { readVenue } from '../content/read-venue.ts';
import type { VenueFiles } from '../content/venue-files.ts';
import { firstMatchFile, withPlan } from '../content/write-plan.ts';
import { CannotEdit } from '../content/yaml-edit/yaml-place.ts';
import { capitalised } from '../domain/capitalised.ts';
import { isDay } from '../domain/day.ts';
import type { Venue } from '../domain/venue.ts';
import { surveyVenue } from '../ground/survey-venue.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { askToWrite, refuse } from './import/ask-to-write.ts';
import { jsonText } from './json-text.ts';
import { judgedText, mendedText, noPlanText, notMendedText, planText } from './plan/plan-text.ts';
import { printFaults } from './print-faults.ts';
import { progressLine } from './progress-line.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { venueFolder } from './venue-folder.ts';

/**
 * `plan MATCH [--anew | --mend] [--yes] [--json]`: chooses which pegs go into a match and cuts them into sections, shows how fair that
 * is, and writes it into the match's file after asking. A plan that stands in the file already is judged and left alone unless
 * `--anew`; `--mend` puts others in for pegs that have closed since and moves as little else as can be. A match that has no file yet gets one from `--water`, `--entries`, `--sections`, `--apart` and `--name`.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args,
    {
      venue: { type: 'string' },
      water: { type: 'string', multiple: true },
      entries: { type: 'string' },
      sections: { type: 'string' },
      apart: { type: 'string' },
      name: { type: 'string' },
      anew: { type: 'boolean', default: false },
      mend: { type: 'boolean', default: false },
      yes: { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
    },
    true,
  );
  const [named, ...more] = positionals;
  if (named === undefined || more.length > 0) {
    throw new UsageError(
      'plan takes one match: plan 2026-12-06-winter-three, the name of a file in matches/ without its ending.',
    );
  }
  const id = basename(named).replace(/\.md$/, '');
  const folder = venueFolder(values.venue, io.environment);
  try {
    tidyFolder(folder);
  } catch (error) {
    return refuse([whyNotWritten(error)], io);
  }
  const read = await readSettled(folder, () => readFolder(folder));
  const path = `matches/${id}.md`;
  const before = read.texts.get(path);
  const text = before ?? firstText(id, values);
  const files = before === undefined ? withChanges(read, [newFile(path, text, undefined)]) : read;
  const venue = checkedVenue(folder, files, path, values.anew, io);
  const match = venue?.matches?.find((each) => each.id === id);
  if (venue === null || match === undefined) return EXIT.faults;
  if (match.status === 'fished') return refuse([`${match.name} has been fished: its plan is part of the log now.`], io);
  const atlas = makeAtlas(venue, surveyVenue(venue), NO_RATINGS);
  if (!values.json) progressLine('Choosing pegs and cutting sections', io).progress('weighing plans');
  const plan = planMatch(atlas, match);
  if ('no' in plan) return refuse(noPlanText(atlas, match, plan.problem, plan.no), io);
  if (match.plan.length > 0 && values.mend && !values.anew) {
    const mended = mendPlan(atlas, match, plan);
    if (mended === null) return refuse(notMendedText(match, judgePlan(match, plan)), io);
    for (const line of mendedText(match, mended, plan)) io.print(line);
    return write(folder, read, newFileOf(path, text, before, mended), values.yes, io);
  }
  if (match.plan.length > 0 && !values.anew) {
    const judged = judgePlan(match, plan);
    if (values.json) io.print(jsonText({ match: match.id, ...judged, best: jsonOf(plan) }));
    else for (const line of judgedText(atlas, match, judged, plan)) io.print(line);
    return judged.broken.length > 0 ? EXIT.faults : EXIT.clean;
  }
  if (values.json) {
    io.print(jsonText({ match: match.id, ...jsonOf(plan) }));
    if (!values.yes) return EXIT.clean;
  } else for (const line of planText(atlas, match, plan)) io.print(line);
  return write(folder, read, newFileOf(path, text, before, plan), values.yes, io);
}

type FirstValues = {
  readonly water?: string[];
  readonly entries?: string;
  readonly sections?: string;
  readonly apart?: string;
  readonly name?: string;
};

function firstText(id: string, { water = [], entries, sections = '1', apart, name }: FirstValues): string {
  const date = id.slice(0, 10);
  const whole = (word: string, value: string) => {
    if (!/^\d{1,3}$/.test(value)) throw new UsageError(`Unexpected ${word} "${value}", expected a whole number.`);
    return Number(value);
  };
  if (!isDay(date) || water.length === 0 || entries === undefined) {
    throw new UsageError(
      `There is no match ${id}. Its name begins with its day; to begin one: plan 2026-12-06-winter-three --water kiln-pool --entries 24 --sections 4 --apart '12 m'.`,
    );
  }
  const words = id.slice(11).replaceAll('-', ' ');
  return firstMatchFile({
    name: name ?? capitalised(words),
    date,
    waters: water,
    entries: whole('entries', entries),
    sections: whole('sections', sections),
    apart: apart ?? null,
  });
}

/** The venue with nothing wrong in it but, where it is to be planned anew, the plan that goes. */
function checkedVenue(folder: string, files: VenueFiles, path: string, isAnew: boolean, io: CommandIo): Venue | null {
  const first = readVenue(files);
  if (first.venue !== null) return first.venue;
  if (isAnew && first.faults.filter(({ severity }) => severity === 'error').every(({ file }) => file === path)) {
    const text = withPlan(files.texts.get(path)!, [], []).replace(/^pegs:[ \t]*\r?\n/m, '');
    const second = readVenue({ ...files, texts: new Map(files.texts).set(path, text) });
    if (second.venue !== null) return second.venue;
  }
  printFaults(folder, first.faults, [], io);
  io.printError('Nothing was planned. Mend these faults first.');
  return null;
}

function newFileOf(
  path: string,
  text: string,
  before: string | undefined,
  plan: Pick<MendedPlan, 'sections' | 'kept'>,
): NewFile | string {
  try {
    return newFile(path, withPlan(text, plan.sections, plan.kept), before);
  } catch (error) {
    if (error instanceof CannotEdit)
      return `${path} cannot be changed: ${error.message}. Write the sections into it by hand.`;
    throw error;
  }
}

function newFile(path: string, text: string, before: string | undefined): NewFile {
  const encoder = new TextEncoder();
  return { path, bytes: encoder.encode(text), before: before === undefined ? null : encoder.encode(before) };
}

async function write(
  folder: string,
  read: VenueFiles,
  file: NewFile | string,
  isAgreed: boolean,
  io: CommandIo,
): Promise<number> {
  if (typeof file === 'string') return refuse([file], io);
  const broken = errorsOf(withChanges(read, [file])).filter((fault) => fault.file === file.path);
  if (broken.length > 0) return refuse(['The match would not be valid:', ...formatFaults(broken)], io);
  if (file.before !== null && file.bytes !== null && Buffer.compare(file.before, file.bytes) === 0) {
    io.printError('The file says just this already: nothing was changed.');
    return EXIT.clean;
  }
  const agreed = await askToWrite(isAgreed, io);
  if (agreed !== true) return agreed;
  const failure = writeChange(folder, [file]);
  if (failure !== null) return refuse([failure], io);
  io.printError(`Wrote ${file.path}. Look it over, change what you like, and let check read it again.`);
  return EXIT.clean;
}

function jsonOf({ planned, sections, kept, problem }: MatchPlan): object {
  const { draws: _, plan: __, ...rest } = planned;
  return { ...rest, sections, kept, notIn: problem.notIn };
}
