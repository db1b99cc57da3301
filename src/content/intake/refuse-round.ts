import { addDays, type Day, formatDay, isDay } from '../../domain/day.ts';
import { pegKey } from '../../domain/peg.ts';
import { frontMatterTexts } from '../edit-front-matter.ts';
import type { Fault } from '../fault.ts';
import { venueId } from '../round-file/record-version.ts';
import type { RoundFile } from '../round-file/round-file.ts';
import type { IntakeOptions } from './plan-intake.ts';
import { lastDayOf } from './round-days.ts';
import type { FolderFiles } from './staged-files.ts';

/**
 * Why a whole round is not taken in: another venue's, dated in the future, in the folder with other rows, or of pegs and
 * waters that are no longer there. All reasons at once.
 * @param file the file the round came in
 * @param settings front matter of `venue.md`, unchecked
 * @param kept name of the folder's round of the same reference, if there is one
 */
export function refusalsOf(
  file: string,
  round: RoundFile,
  folder: FolderFiles,
  settings: Readonly<Record<string, unknown>>,
  options: Pick<IntakeOptions, 'today' | 'without'>,
  kept: string | undefined,
): Fault[] {
  const faults: Fault[] = [];
  const refuse = (field: string, rule: string, found: string, expected: string, mend: string): void => {
    faults.push({ file, line: 1, column: 1, field, rule, found, expected, mend, severity: 'error' });
  };
  const [name, club] = [String(settings.name ?? ''), String(settings.club ?? '')];
  if (round.venue.id !== venueId(name, club)) {
    refuse(
      'venue',
      'round-venue',
      `a round of ${round.venue.name}`,
      `a round of ${name} (${club})`,
      'Take it in at its own venue: --venue names another folder. If this venue was renamed, publish the guide and walk the round with it.',
    );
    return faults;
  }
  const last = lastDayOf(round);
  if (last > options.today) {
    refuse(
      'day',
      'round-future',
      formatDay(last),
      `a day up to ${formatDay(options.today)}`,
      'The clock of the phone was wrong. Put the right day into the round on the phone and hand it over again.',
    );
  }
  if (kept !== undefined) {
    refuse(
      'ref',
      'round-differs',
      `round ${round.ref} with other rows than rounds/${kept}`,
      'the rows that were taken in',
      'A round is taken in once. Put what was changed into a new round.',
    );
  }
  for (const { water, peg } of round.pegs) {
    const key = pegKey(water, peg);
    if (options.without.has(key)) continue;
    const day = firstDayAt(round, key);
    const since = numberSince(folder.text(`pegs/${key}.md`) ?? '');
    if (since !== null && day < since) {
      refuse(
        `pegs.${key}`,
        'round-number',
        `peg ${key}, seen on ${formatDay(day)}`,
        `a day from ${formatDay(since)} on, since when this post carries the number (pegs/${key}.md)`,
        `The pegs were numbered anew after it was walked: the finding is of another post. Leave it out with --without ${key}, and write it into the record of the right one.`,
      );
      continue;
    }
    if (folder.pegsOf(water).includes(peg)) continue;
    refuse(
      `pegs.${key}`,
      'round-peg',
      `peg ${key}`,
      `one of the pegs in pegs/${water}`,
      `It is no longer in the folder. Leave it out with --without ${key}, or bring its record back.`,
    );
  }
  const waters = [...round.gauges, ...(round.places ?? []), ...(round.notices ?? [])].map(({ water }) => water);
  for (const water of new Set(waters)) {
    if (folder.text(`waters/${water}.md`) !== null) continue;
    refuse(
      `waters.${water}`,
      'round-water',
      `water ${water}`,
      'a water of this venue',
      'It is no longer in the folder: bring its file back, or take what was noted of it out of the round.',
    );
  }
  const visited = new Set(round.pegs.map(({ water, peg }) => pegKey(water, peg)));
  const ids = new Set(round.photos.map(({ id }) => id));
  const isAstray = ({ water, peg }: RoundFile['photos'][number]) =>
    peg !== undefined && !visited.has(pegKey(water, peg));
  if (ids.size < round.photos.length || round.photos.some(isAstray)) {
    refuse(
      'photos',
      'round-photo',
      'a photo that belongs to no peg of the round, or two of one id',
      'photos of the pegs of the round, each with an id of its own',
      'Hand the round over again.',
    );
  }
  return faults;
}

/** The first day on which anything of a finding was seen. */
function firstDayAt({ day, pegs }: RoundFile, key: string): Day {
  const days = pegs
    .filter(({ water, peg }) => pegKey(water, peg) === key)
    .flatMap((finding) => [
      finding.day ?? day,
      ...Object.values(finding.days ?? {}),
      ...finding.hazards.map((hazard) => hazard.day ?? day),
    ]);
  return days.sort()[0] ?? day;
}

/** The first day of the number that a record's post carries today; null where it always had it. */
function numberSince(text: string): Day | null {
  const { was, since } = frontMatterTexts(text) as { readonly was?: unknown; readonly since?: unknown };
  const until: unknown = Array.isArray(was) ? (was.at(-1) as { readonly until?: unknown } | null)?.until : undefined;
  if (typeof until === 'string' && isDay(until)) return addDays(until, 1);
  return typeof since === 'string' && isDay(since) ? since : null;
}
