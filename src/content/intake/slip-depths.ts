import type { Units } from '../../domain/bag.ts';
import { formatLength } from '../../domain/length.ts';
import { isFarFromSurvey } from '../../domain/plumb-doubt.ts';
import type { ExpectedPlumb, PlumbExpecter } from '../../ground/expected-plumb.ts';
import type { PlumbedLine, Slip } from '../../match-day/slip.ts';
import { LogTable } from '../papers/log-table.ts';
import type { Asker } from '../papers/questions.ts';
import { SOUNDING_COLUMNS, soundingRow } from '../papers/soundings/sounding-row.ts';
import type { StagedFiles } from './staged-files.ts';

/** What own depths are held against, and who is asked where they differ. */
export interface DepthCheck {
  readonly expected: PlumbExpecter;
  readonly asker: Asker;
}

/**
 * Writes what an angler plumbed as soundings of that day, each at its place, so that a peg moved later does not move them. One
 * far from the survey is asked about and left out where nobody says yes. One place and day has one depth: a corrected slip's goes
 * in place of what was written. Told in lines.
 */
export function putDepths(
  slip: Slip,
  { expected, asker }: DepthCheck,
  units: Units,
  files: StagedFiles,
): readonly string[] {
  if (slip.depths.length === 0) return [];
  const path = `soundings/${slip.water}.csv`;
  const table = new LogTable(files.text(path), SOUNDING_COLUMNS);
  const told: string[] = [];
  let isLevelKnown = true;
  for (const plumbed of slip.depths) {
    const there = expected(slip.water, slip.peg, plumbed.lineMetres, slip.day);
    const words = lineWords(slip, plumbed, units);
    if (there === null || (there.why !== undefined && there.why !== 'unplumbed')) {
      told.push(`${words} left out: by the map no water lies there.`);
      continue;
    }
    const row = soundingRow({ at: there.at, depthMetres: plumbed.depthMetres, day: slip.day, level: null });
    const isThere = (each: Readonly<Record<string, string>>) =>
      each.lat === row.lat && each.lng === row.lng && each.date === row.date;
    const before = table.rows().find(isThere);
    if (before?.depth === row.depth) continue;
    if (!isTaken(slip, plumbed, there, units, asker)) {
      told.push(`${words} left out: the guide has ${formatLength(there.depthMetres!, units)} there.`);
      continue;
    }
    table.need(SOUNDING_COLUMNS);
    table.replace(isThere, [{ ...before, ...row }]);
    isLevelKnown &&= there.isLevelKnown;
    told.push(`${words}, ${beside(there, before?.depth, units)}`);
    files.put(path, table.text());
  }
  if (isLevelKnown) return told;
  return [
    ...told,
    `Peg ${slip.peg}: no reading of the gauge lies within 7 days of ${slip.day}, so these depths count as plumbed with the water at its datum.`,
  ];
}

/** Near the survey, or somebody said that it is right. */
function isTaken(
  { water, peg, day }: Slip,
  { lineMetres, depthMetres }: PlumbedLine,
  { depthMetres: surveyed, nearestSoundingMetres }: ExpectedPlumb,
  units: Units,
  asker: Asker,
): boolean {
  if (surveyed === null || !isFarFromSurvey(depthMetres, surveyed, nearestSoundingMetres ?? 0)) return true;
  const own = formatLength(depthMetres, units);
  const line = `${lineMetres.toFixed(1)} m out`;
  return (
    asker.ask({
      scope: 'papers',
      of: `${water}/${peg} ${day}`,
      // With the depth, so that an answer holds for no other one.
      key: `depth ${line} ${depthMetres.toFixed(2)} m`,
      ask: `A slip has ${own} at ${line}, and the guide has ${formatLength(surveyed, units)} there. Take it?`,
      evidence: [
        `the nearest sounding is ${(nearestSoundingMetres ?? 0).toFixed(1)} m away`,
        'it may be of another line, in another unit, or a hole that the survey missed',
      ],
      choices: [
        { value: 'take', words: 'it was plumbed there: write it as a sounding' },
        { value: 'leave', words: 'leave this depth out' },
      ],
      suggested: 'leave',
    }) === 'take'
  );
}

function lineWords({ peg, day }: Slip, { lineMetres, depthMetres }: PlumbedLine, units: Units): string {
  return `Peg ${peg}, ${lineMetres.toFixed(1)} m out on ${day}: ${formatLength(depthMetres, units)} plumbed`;
}

function beside({ depthMetres }: ExpectedPlumb, before: string | undefined, units: Units): string {
  const survey =
    depthMetres === null ? 'where nobody had plumbed' : `where the guide has ${formatLength(depthMetres, units)}`;
  return before === undefined ? survey : `${survey}, in place of ${before}`;
}
