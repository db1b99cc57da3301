import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { EXIT } from '../../src/commands/command-io.ts';
import { run } from '../../src/commands/ratings.ts';
import { UsageError } from '../../src/commands/read-arguments.ts';
import { writeVenue } from '../demo/write-venue.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'peg-atlas-ratings-'));
  writeVenue({ seed: 5, waters: 1, pegs: 14, anglers: 24, events: 30, soundings: 60 }, folder);
});
afterAll(() => rmSync(folder, { recursive: true }));

async function ratings(...args: string[]) {
  const printed: string[] = [];
  const told: string[] = [];
  const code = await run(args, {
    environment: { VENUE_DIR: folder },
    print: (line) => printed.push(line),
    printError: (line) => told.push(line),
    isTerminal: false,
  });
  return { code, text: printed.join('\n'), told: told.join('\n') };
}

describe('ratings --json', () => {
  test('prints one document of the published shape, key by key', async () => {
    const { code, text } = await ratings('--json');
    expect(code).toBe(EXIT.clean);
    const document = JSON.parse(text);
    expect(Object.keys(document)).toEqual([
      'format',
      'model',
      'featureMonths',
      'pegs',
      'pegMonths',
      'framing',
      'waterLevels',
      'backtest',
      'besides',
      'dnw',
      'fits',
    ]);
    expect(Object.keys(document.model)).toEqual(['sd', 'logMarginal', 'sessions', 'censored']);
    expect(Object.keys(document.model.sd)).toEqual(['event', 'angler', 'peg', 'feature', 'featureMonth', 'residual']);
    const keys = (rows: object[]) => [...new Set(rows.map((row) => Object.keys(row).join(' ')))];
    expect(keys(document.featureMonths)).toEqual(['feature month logWorth sd low80 high80 sessions evidence']);
    expect(keys(document.pegs)).toEqual(['water peg logWorth sd']);
    expect(keys(document.pegMonths)).toEqual(['water peg month worth low80 high80 sessions evidence']);
    expect(keys(document.framing)).toEqual(['water month events mostlyFrom frameKg winKg']);
    expect(Object.keys(document.backtest)).toEqual([
      'events',
      'sessions',
      'scores',
      'calibration',
      'parts',
      'balance',
      'besides',
    ]);
  });

  test('states worth as multiples of par inside their intervals', async () => {
    const { featureMonths, pegMonths } = JSON.parse((await ratings('--json')).text);
    expect(pegMonths).toHaveLength(14 * 12);
    for (const row of pegMonths) {
      expect(row.low80).toBeLessThan(row.worth);
      expect(row.high80).toBeGreaterThan(row.worth);
      expect(['thin', 'fair', 'solid']).toContain(row.evidence);
    }
    for (const { logWorth, sd, low80, high80 } of featureMonths) {
      expect(Math.log(low80)).toBeCloseTo(logWorth - 1.2815515655446004 * sd, 9);
      expect(Math.log(high80)).toBeCloseTo(logWorth + 1.2815515655446004 * sd, 9);
    }
  });

  test('prints a bag part where asked', async () => {
    const [total, carp] = [await ratings('--json'), await ratings('--json', '--bag', 'carp')];
    expect(JSON.parse(carp.text).model.censored).toBeGreaterThan(JSON.parse(total.text).model.censored);
  });

  test('prints every table with --everything', async () => {
    const all = JSON.parse((await ratings('--everything')).text);
    expect(all.bags.map(({ bag }: { bag: string }) => bag)).toEqual(['total', 'silvers', 'carp']);
    expect(Object.keys(all)).toEqual(expect.arrayContaining(['expectedBags', 'framingMakeUp', 'choices', 'notes']));
  });
});

describe('ratings', () => {
  test('prints a month in words: every peg with its interval, count and evidence', async () => {
    const { code, text } = await ratings('--month', '7');
    expect(code).toBe(EXIT.clean);
    expect(text).toMatch(/^Osierholt Fishery, July: worth of the whole bag in multiples of par, with 80% intervals/);
    expect(text).toMatch(/^Peg +worth +low +high +sessions +evidence$/m);
    expect(text.match(/^\d+[a-z]? +\d\.\d\d +\d\.\d\d +\d\.\d\d +\d+ +(thin|fair|solid)$/gm)).toHaveLength(14);
    expect(text).toMatch(/^Left out: \d+ \(/m);
  });

  test('takes the month of the guide’s day unless told', async () => {
    expect((await ratings()).text).toMatch(/, November: /);
  });

  test.each([
    [['--bag', 'eels'], 'Unexpected bag "eels", expected one of: total, silvers, carp.'],
    [['--month', '13'], 'Unexpected month "13", expected a number from 1 to 12.'],
    [['--jsn'], /Unknown option '--jsn'/],
  ])('refuses %j with what was expected', async (args, message) => {
    await expect(ratings(...args)).rejects.toThrow(UsageError);
    await expect(ratings(...args)).rejects.toThrow(message);
  });

  test('rates nothing of a folder with faults, and shows them', async () => {
    const { code, text, told } = await ratings('--venue', join(folder, 'nowhere'), '--json');
    expect(code).toBe(EXIT.faults);
    expect(text).toBe('');
    expect(told).toMatch(/no such folder.*\n(.*\n)*Nothing was rated\. Mend these faults first\./);
  });
});
