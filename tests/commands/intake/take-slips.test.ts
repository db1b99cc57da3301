import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { EXIT } from '../../../src/commands/command-io.ts';
import { run } from '../../../src/commands/intake.ts';
import { loadVenue } from '../../../src/content/load-venue.ts';
import type { FishingEvent, Session } from '../../../src/domain/session.ts';
import { GRAMS_PER_POUND } from '../../../src/domain/weight.ts';
import { plumbExpecter } from '../../../src/ground/expected-plumb.ts';
import type { Slip } from '../../../src/match-day/slip.ts';
import { slipFileText } from '../../../src/match-day/slip-file.ts';
import { writeVenue } from '../../demo/write-venue.ts';
import { recordedIo } from '../recorded-io.ts';

let folder: string;
let scratch: string;
let event: FishingEvent;
let weighed: Session;
let slip: Slip;

beforeAll(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'peg-atlas-take-slips-'));
  folder = join(scratch, 'venue');
  writeVenue({ seed: 3, waters: 1, pegs: 30, anglers: 20, events: 6, soundings: 40 }, folder);
  const { venue } = await loadVenue(folder);
  event = venue!.events.findLast(({ kind, listing }) => kind === 'match' && listing === 'full')!;
  weighed = venue!.sessions.find((session) => session.event === event.id && session.status === 'weighed')!;
  slip = {
    venue: venue!.settings.name,
    water: event.water,
    peg: weighed.painted ?? weighed.peg,
    day: event.day,
    match: null,
    hours: 5,
    caught: [{ minute: 60, part: venue!.settings.bagParts[0]!.id, grams: Math.round(weighed.weightGrams!) }],
    fed: [],
    depths: [],
    spot: 'margin',
    method: 'pole',
    bait: 'maggot',
    lines: 2,
    waterDegreesC: null,
  };
});
afterAll(() => rmSync(scratch, { recursive: true }));

async function intake(texts: readonly string[], ...more: string[]) {
  const paths = texts.map((text, i) => {
    const path = join(scratch, `slip-${i}.txt`);
    writeFileSync(path, text);
    return path;
  });
  const io = recordedIo({ VENUE_DIR: folder });
  const code = await run([...paths, ...more], io);
  return { code, printed: io.printed.join('\n'), errors: io.errors.join('\n') };
}

const log = () => readFileSync(join(folder, `sessions/${event.day.slice(0, 4)}/sessions.csv`), 'utf8');
const rowOf = () =>
  log()
    .split(/\r?\n/)
    .filter((row) => row.startsWith(`${event.id},`) && row.split(',')[2] === slip.peg);

test('refuses what is edited, of another venue, of no peg here, or of a match not taken in, and changes nothing', async () => {
  const before = log();
  const text = await slipFileText(slip);
  expect((await intake([text.replace('margin', 'island')], '--yes')).errors).toContain('was changed since');
  expect((await intake([await slipFileText({ ...slip, venue: 'Elsewhere' })], '--yes')).errors).toContain(
    'It is of Elsewhere',
  );
  expect((await intake([await slipFileText({ ...slip, peg: '999' })], '--yes')).errors).toContain('does not have');
  const early = await slipFileText({ ...slip, day: '2026-12-30', match: '2026-12-30-late' });
  expect((await intake([early], '--yes')).errors).toContain('take in the match day first');
  // One bad slip among good ones holds all of them back.
  expect((await intake([text, early], '--yes')).code).toBe(EXIT.faults);
  expect(log()).toBe(before);
});

test('fills the words of its row after showing them, changes no weight, and twice adds nothing', async () => {
  const [before] = rowOf();
  const text = await slipFileText(slip);
  const shown = await intake([text]);
  expect(shown.printed).toContain(`peg ${slip.peg}: `);
  expect(shown.code).toBe(EXIT.faults);
  expect(rowOf()).toEqual([before]);
  expect((await intake([text], '--yes')).errors).toContain('Taken in.');
  const rows = rowOf();
  expect(rows).toHaveLength(1);
  expect(rows[0]!.split(',').slice(0, 6)).toEqual(before!.split(',').slice(0, 6));
  expect(rows[0]).toMatch(/margin,pole,maggot,2$/);
  expect((await intake([text], '--yes')).errors).toContain('nothing new');
  expect(rowOf()).toEqual(rows);
});

test('asks whether it is of this peg where it and the scales are far apart', async () => {
  const caught = [{ ...slip.caught[0]!, grams: Math.min(200_000, slip.caught[0]!.grams * 5) }];
  const text = await slipFileText({ ...slip, caught, bait: 'corn' });
  expect((await intake([text])).printed).toMatch(/the slip comes to .* Is it of this peg\? The scales’ weight stays/);
});

test('makes a session of a chosen peg, corrected by a later slip, and of nothing caught a blank', async () => {
  const day = `${event.day.slice(0, 4)}-${event.day.slice(5, 7)}-28` as const;
  const chosen = { ...slip, day, waterDegreesC: 6.5, caught: [{ ...slip.caught[0]!, grams: 2000 }] };
  expect((await intake([await slipFileText(chosen)], '--yes')).errors).toContain('Taken in.');
  const id = `${day}-${slip.water}-pleasure`;
  const rows = () =>
    log()
      .split(/\r?\n/)
      .filter((row) => row.startsWith(`${id},`));
  expect(rows()).toHaveLength(1);
  const { venue } = await loadVenue(folder);
  expect(venue!.events.find((one) => one.id === id)).toMatchObject({
    kind: 'pleasure',
    conditions: { waterDegreesC: 6.5 },
  });
  expect((await intake([await slipFileText(chosen)], '--yes')).errors).toContain('nothing new');
  expect((await intake([await slipFileText({ ...chosen, caught: [] })], '--yes')).printed).toContain(
    'in place of another slip',
  );
  expect(rows()).toHaveLength(1);
  expect(rows()[0]).toContain(',blank,');
});

describe('what was fed and plumbed', () => {
  const soundings = () => readFileSync(join(folder, `soundings/${slip.water}.csv`), 'utf8').split(/\r?\n/);
  const answers = () => join(scratch, 'venue.import.yaml');
  /** A line with a depth by the survey, and that depth. */
  const lineOf = async () => {
    const { venue } = await loadVenue(folder);
    const expected = plumbExpecter(venue!);
    for (let lineMetres = 4; lineMetres < 40; lineMetres++) {
      const there = expected(slip.water, slip.peg, lineMetres, slip.day);
      if (there?.depthMetres != null) return { lineMetres, surveyed: there.depthMetres };
    }
    throw new Error('The invented water has no plumbed line before this peg.');
  };

  test('goes into the row and the soundings, replaced by a corrected slip, and not again by the same', async () => {
    const { lineMetres, surveyed } = await lineOf();
    const before = soundings();
    const fed = [
      { minute: 3, what: 'hemp' },
      { minute: 65, what: 'pellet; margin' },
    ];
    const own = Math.round((surveyed + 0.1) * 100) / 100;
    const first = await slipFileText({ ...slip, fed, depths: [{ lineMetres, depthMetres: own }] });
    const shown = await intake([first], '--yes');
    expect(shown.printed).toContain(`${lineMetres.toFixed(1)} m out on ${slip.day}: `);
    expect(rowOf()[0]).toContain('0:03 hemp; 1:05 pellet margin');
    const added = soundings().filter((row) => !before.includes(row));
    expect(added).toEqual([expect.stringMatching(new RegExp(`,${own.toFixed(2)} m,${slip.day},`))]);
    expect((await intake([first], '--yes')).errors).toContain('nothing new');
    const corrected = await slipFileText({ ...slip, fed, depths: [{ lineMetres, depthMetres: own + 0.1 }] });
    expect((await intake([corrected], '--yes')).printed).toContain(`in place of ${own.toFixed(2)} m`);
    expect(soundings()).toHaveLength(before.length + 1);
    expect((await loadVenue(folder)).faults.filter(({ severity }) => severity !== 'warning')).toEqual([]);
  });

  test('is asked about where it is far from the survey, and never taken unasked; an answer holds for that depth alone', async () => {
    const { lineMetres, surveyed } = await lineOf();
    const before = soundings();
    const far = Math.round((surveyed + 3) * 100) / 100;
    const text = await slipFileText({ ...slip, spot: 'far', depths: [{ lineMetres, depthMetres: far }] });
    const asked = await intake([text], '--yes');
    expect(asked.code).toBe(EXIT.faults);
    expect(asked.errors).toContain('Take it?');
    expect(soundings()).toEqual(before);
    const key = `depth ${lineMetres.toFixed(1)} m out ${far.toFixed(2)} m`;
    const of = `${slip.water}/${slip.peg} ${slip.day}`;
    writeFileSync(answers(), `papers: { "${of}": { "${key}": leave } }\n`);
    expect((await intake([text], '--yes')).printed).toContain('left out: the guide has');
    expect(soundings()).toEqual(before);
    expect(rowOf()[0]).toContain('far');
    const other = await slipFileText({ ...slip, spot: 'far', depths: [{ lineMetres, depthMetres: far + 1 }] });
    expect((await intake([other], '--yes')).errors).toContain('Take it?');
    writeFileSync(answers(), `papers: { "${of}": { "${key}": take } }\n`);
    await intake([text], '--yes');
    expect(soundings().filter((row) => !before.includes(row))).toHaveLength(1);
  });

  test('is left out, and said, where the map has no water', async () => {
    const text = await slipFileText({ ...slip, depths: [{ lineMetres: 199, depthMetres: 2 }] });
    expect((await intake([text])).printed).toContain('left out: by the map no water lies there');
  });
});

test('writes words that a spreadsheet would run as words', async () => {
  await intake([await slipFileText({ ...slip, bait: '=1+1' })], '--yes');
  expect(rowOf()[0]).toContain("'=1+1");
});

describe('when the fish came', () => {
  const file = () => join(folder, `sessions/${event.day.slice(0, 4)}/hours.csv`);
  const hoursOf = (id: string) =>
    readFileSync(file(), 'utf8')
      .split(/\r?\n/)
      .filter((row) => row.startsWith(`${id},${slip.peg},`));
  const part = () => slip.caught[0]!.part;
  const caughtAt = (...minutes: readonly number[]) =>
    minutes.map((minute) => ({ minute, part: part(), grams: GRAMS_PER_POUND }));

  test('is written by hour of the match, replaced by a corrected slip, and not again by the same', async () => {
    const first = await slipFileText({ ...slip, caught: caughtAt(0, 59.9, 60, event.hours * 60 + 4) });
    expect((await intake([first], '--yes')).printed).toContain('by hour of the match 1: 2 lb 0 oz, 2: 1 lb 0 oz, ');
    const rows = (...of: readonly string[]) => of.map((row) => `${event.id},${slip.peg},${row}`);
    expect(hoursOf(event.id)).toEqual(
      rows(`1,${part()},2-00`, `2,${part()},1-00`, `${Math.ceil(event.hours)},${part()},1-00`),
    );
    expect((await intake([first], '--yes')).errors).toContain('nothing new');
    const corrected = await slipFileText({ ...slip, caught: caughtAt(130) });
    expect((await intake([corrected], '--yes')).printed).toContain('in place of what was written');
    expect(hoursOf(event.id)).toEqual(rows(`3,${part()},1-00`));
    const { venue, faults } = await loadVenue(folder);
    expect(faults.filter(({ severity }) => severity !== 'warning')).toEqual([]);
    expect(venue!.hours).toContainEqual(expect.objectContaining({ event: event.id, peg: slip.peg, hour: 3 }));
  });

  test('is asked about where it was noted long after the match', async () => {
    const late = await slipFileText({ ...slip, caught: caughtAt(10, 400) });
    expect((await intake([late])).printed).toContain('1 lb 0 oz was noted more than 15 minutes outside the match');
  });

  test('keeps two slips of one chosen peg and day apart, and takes the same one corrected in its own place', async () => {
    const day = `${event.day.slice(0, 7)}-27`;
    const id = `${day}-${slip.water}-pleasure`;
    const of = (ref: string, ...minutes: readonly number[]) =>
      slipFileText({ ...slip, day, id: ref, caught: caughtAt(...minutes) });
    await intake([await of('morning1', 10)], '--yes');
    await intake([await of('evening1', 70)], '--yes');
    await intake([await of('morning1', 10, 130)], '--yes');
    const rows = log()
      .split(/\r?\n/)
      .filter((row) => row.startsWith(`${id},`));
    expect(rows).toHaveLength(2);
    expect(hoursOf(id)).toEqual([
      `${id},${slip.peg},1,${part()},1-00,morning1`,
      `${id},${slip.peg},3,${part()},1-00,morning1`,
      `${id},${slip.peg},2,${part()},1-00,evening1`,
    ]);
    expect((await loadVenue(folder)).venue).not.toBeNull();
  });

  test('of a chosen day that turns out longer, by the same slip or another, lie within the day as it is then', async () => {
    const day = `${event.day.slice(0, 7)}-26`;
    const id = `${day}-${slip.water}-pleasure`;
    const of = (ref: string, hours: number, ...minutes: readonly number[]) =>
      slipFileText({ ...slip, day, id: ref, hours, caught: caughtAt(...minutes) });
    const hoursOfDay = async () => (await loadVenue(folder)).venue!.events.find((one) => one.id === id)!.hours;
    await intake([await of('morning2', 3, 10)], '--yes');
    expect(await hoursOfDay()).toBe(3);
    const longer = await of('morning2', 6, 10, 340);
    expect((await intake([longer], '--yes')).printed).toContain(`${id}: hours “3” becomes “6”`);
    expect(hoursOf(id)).toEqual([
      `${id},${slip.peg},1,${part()},1-00,morning2`,
      `${id},${slip.peg},6,${part()},1-00,morning2`,
    ]);
    expect(await hoursOfDay()).toBe(6);
    expect((await intake([longer], '--yes')).errors).toContain('nothing new');
    // A short stay of another angler takes nothing from it; two slips at once count as one after the other.
    await intake([await of('evening2', 2, 70), await of('night222', 8, 470)], '--yes');
    expect(await hoursOfDay()).toBe(8);
    expect(hoursOf(id)).toHaveLength(4);
    expect(hoursOf(id)).toContain(`${id},${slip.peg},8,${part()},1-00,night222`);
    expect((await loadVenue(folder)).faults.filter(({ severity }) => severity !== 'warning')).toEqual([]);
  });
});
