import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { makeAtlas } from '../../src/atlas/atlas.ts';
import { NO_RATINGS } from '../../src/atlas/no-ratings.ts';
import { factsOfPeg } from '../../src/atlas/peg-verdicts.ts';
import { EXIT } from '../../src/commands/command-io.ts';
import { run } from '../../src/commands/plan.ts';
import { UsageError } from '../../src/commands/read-arguments.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { pegVerdict } from '../../src/domain/peg-verdict.ts';
import { surveyVenue } from '../../src/ground/survey-venue.ts';
import { writeVenue } from '../demo/write-venue.ts';
import { recordedIo } from './recorded-io.ts';

let folder: string;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'peg-atlas-plan-'));
  writeVenue({ seed: 5, waters: 1, pegs: 30, anglers: 30, events: 30, soundings: 60 }, folder);
});
afterAll(() => rmSync(folder, { recursive: true }));

async function plan(...args: string[]) {
  const io = recordedIo({ VENUE_DIR: folder });
  const code = await run(args, io);
  return { code, text: io.printed.join('\n'), told: io.errors.join('\n') };
}

const ID = '2026-12-06-winter-three';
const file = () => join(folder, 'matches', `${ID}.md`);

describe('plan', () => {
  test('says how a match is begun where there is none', async () => {
    await expect(plan(ID)).rejects.toThrow(UsageError);
    await expect(plan()).rejects.toThrow('plan takes one match');
    await expect(plan(ID, '--water', 'x', '--entries', 'many')).rejects.toThrow('expected a whole number');
  });

  test('writes a plan that check accepts, with no peg that is closed that day, and the same again', async () => {
    const { water: id } = (await loadVenue(folder)).venue!.pegs[0]!;
    const first = await plan(ID, '--water', id, '--entries', '9', '--sections', '3', '--yes');
    expect(first.told).toContain(`Wrote matches/${ID}.md`);
    expect(first.code).toBe(EXIT.clean);
    expect(first.text).toMatch(/Its sections lie 0\.\d+ apart/);
    const { venue, faults } = await loadVenue(folder);
    expect(faults.filter(({ severity }) => severity === 'error')).toEqual([]);
    const match = venue!.matches![0]!;
    expect(match.plan.map(({ pegs }) => pegs.length)).toEqual([3, 3, 3]);
    const atlas = makeAtlas(venue!, surveyVenue(venue!), NO_RATINGS);
    for (const key of match.plan.flatMap(({ pegs }) => pegs)) {
      expect(pegVerdict(factsOfPeg(atlas, atlas.pegsByKey.get(key)!), match.day).state).not.toBe('closed');
    }
    const written = readFileSync(file(), 'utf8');
    await plan(ID, '--anew', '--yes');
    expect(readFileSync(file(), 'utf8')).toBe(written);
  });

  test('judges a plan that a person changed and leaves it alone', async () => {
    const written = readFileSync(file(), 'utf8');
    const [, peg] = /A: \[(\S+),/.exec(written)!;
    writeFileSync(
      file(),
      written.replace(/B: \[[^\]]*\]/, (section) => section),
    );
    const judged = await plan(ID);
    expect(judged.code).toBe(EXIT.clean);
    expect(judged.text).toContain('The plan in the file:');
    expect(judged.text).toContain('To plan it anew: --anew.');
    writeFileSync(file(), written.replace('status: planned', `status: planned\nleave-out: [${peg}]`));
    const broken = await plan(ID);
    expect(broken.code).toBe(EXIT.faults);
    expect(broken.told).toContain('match-left-out');
    const anew = await plan(ID, '--anew', '--yes');
    expect(anew.code).toBe(EXIT.clean);
    expect(readFileSync(file(), 'utf8')).not.toContain(`${peg},`);
    writeFileSync(file(), written);
  });

  test('mends a plan of which a peg has closed since, and lets every other peg stay in', async () => {
    const written = readFileSync(file(), 'utf8');
    expect((await plan(ID, '--mend', '--yes')).told).toContain('there is nothing to mend');
    const [, peg] = /A: \[([^,\]]+),/.exec(written)!;
    const notice = join(folder, 'notices', '2026-12-05-board.md');
    mkdirSync(join(folder, 'notices'), { recursive: true });
    writeFileSync(notice, `---\ntitle: A board has gone\nkind: closure\nfrom: 2026-12-05\npegs: [${peg}]\n---\n`);
    const { faults } = await loadVenue(folder);
    // The closing is published all the same: it never waits for a plan.
    expect(faults.map(({ rule, severity }) => [rule, severity])).toContainEqual(['match-peg-closed', 'warning']);
    expect(faults.filter(({ severity }) => severity === 'error')).toEqual([]);
    const judged = await plan(ID);
    expect(judged.code).toBe(EXIT.faults);
    expect(judged.text).toContain(`${peg} may not go in: closed since 5 Dec 2026: A board has gone.`);
    expect(judged.text).toContain('--mend');
    const mended = await plan(ID, '--mend', '--yes');
    expect(mended.code).toBe(EXIT.clean);
    expect(mended.text).toContain(', section A, closed since 5 Dec 2026: A board has gone.');
    const pegsIn = (text: string) =>
      [...text.matchAll(/^ {2}[A-Z]: \[(.*)\]$/gm)].flatMap(([, pegs]) => pegs!.split(', '));
    const [was, is] = [pegsIn(written), pegsIn(readFileSync(file(), 'utf8'))];
    expect(was.filter((each) => !is.includes(each))).toEqual([peg]);
    expect(is.filter((each) => !was.includes(each))).toHaveLength(1);
    expect((await loadVenue(folder)).faults.filter(({ rule }) => rule === 'match-peg-closed')).toEqual([]);
    rmSync(notice);
    writeFileSync(file(), written);
  });

  test('says in words what stands in the way', async () => {
    const written = readFileSync(file(), 'utf8');
    const why = async (change: (text: string) => string) => {
      writeFileSync(file(), change(written));
      const { code, told } = await plan(ID, '--anew');
      expect(code).toBe(EXIT.faults);
      return told.split('\n').find((line) => line !== 'Choosing pegs and cutting sections.');
    };
    expect(await why((text) => text.replace('entries: 9', 'entries: 400'))).toMatch(
      /400 entries, and \d+ pegs of .* may go in on 6 Dec 2026/,
    );
    expect(await why((text) => text.replace('sections: 3', 'sections: 3\napart: 90 m'))).toMatch(
      /9 entries do not fit 90 m apart on .*; \d do\. Lower apart/,
    );
    expect(await why((text) => text.replace('sections: 3', 'sections: 9'))).toMatch(
      /at least two anglers in every section/,
    );
    writeFileSync(file(), written);
    const water = /^waters: \[(.*)\]$/m.exec(written)![1]!;
    mkdirSync(join(folder, 'notices'), { recursive: true });
    const notice = join(folder, 'notices', '2026-12-01-all-shut.md');
    writeFileSync(
      notice,
      `---\ntitle: All shut\nkind: closure\nfrom: 2026-12-01\nuntil: 2026-12-31\nwaters: [${water}]\n---\n\nAll shut.\n`,
    );
    expect(await why((text) => text)).toMatch(/no peg of .* may go in on 6 Dec 2026/);
    rmSync(notice);
    writeFileSync(file(), written);
  });

  test('writes nothing without a yes', async () => {
    const before = readFileSync(file(), 'utf8');
    writeFileSync(file(), before.replace('sections: 3', 'sections: 2'));
    const changed = readFileSync(file(), 'utf8');
    const { code, told } = await plan(ID, '--anew');
    expect(code).toBe(EXIT.faults);
    expect(told).toContain('Nothing was changed.');
    expect(readFileSync(file(), 'utf8')).toBe(changed);
  });

  test('prints one document for programs and writes nothing, and leaves a match alone that was fished', async () => {
    const before = readFileSync(file(), 'utf8');
    const { code, text } = await plan(ID, '--anew', '--json');
    expect(code).toBe(EXIT.clean);
    const document = JSON.parse(text);
    expect(document).toMatchObject({ match: ID, proof: expect.any(String), spread: expect.any(Number) });
    expect(document.sections[0].worth).toHaveProperty('chanceBest');
    expect(readFileSync(file(), 'utf8')).toBe(before);
    writeFileSync(file(), before.replace('sections: 2', 'sections: 3').replace('status: planned', 'status: fished'));
    const fished = await plan(ID, '--anew', '--yes');
    expect(fished.code).toBe(EXIT.faults);
    expect(fished.told).toContain('has been fished');
    writeFileSync(file(), before);
  });
});
