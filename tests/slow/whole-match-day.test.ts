import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TamperedHost } from '../browser/tampered-host.ts';
import { childEnvironment } from '../child-environment.ts';
import { type Bag, ScalePhone } from './scale-phone.ts';

// A match of forty on two waters, from the plan to the guide built anew, on two phones whose host is gone for the whole day and which
// are killed at random moments. Order and points are worked out here once more, by hand and from the typed weights alone; how a
// match is decided is common practice of clubs, no source.

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const MATCH = '2026-12-13-winter-forty';
const FILE = `matches/${MATCH}.md`;
const EVENTS = ['2026-12-13-eelback', '2026-12-13-kiln-pool'];
const PLAN = ['plan', MATCH, '--water', 'eelback', '--water', 'kiln-pool', '--entries', '40', '--sections', '5'];
const NAME = 'Specimen';
/** Invented, and no two alike to the register of anglers, which does not look at digits. */
const nameOf = (i: number) => `Pat ${NAME}${String.fromCharCode(97 + (i >> 3), 97 + (i % 8))}`;

let scratch: string;
let venue: string;
let host: TamperedHost;
let one: ScalePhone;
let two: ScalePhone;
let sections: readonly (readonly string[])[];
let bags: readonly Bag[];

function command(folder: string, ...args: string[]) {
  return spawnSync(process.execPath, ['src/commands/venue.ts', ...args], {
    cwd: PROJECT,
    env: childEnvironment({ VENUE_DIR: folder }),
    encoding: 'utf8',
  });
}

/** Numbers below a limit, by a seed, so that a failure can be had again. */
function chances(seed: number): (limit: number) => number {
  let state = seed;
  return (limit) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % limit;
  };
}
const below = chances(20_261_213);

function bagOf(peg: string, i: number): Bag {
  const odd = ({ 5: 'blank', 14: 'absent', 20: 'disqualified' } as const)[i] ?? (i % 9 === 8 ? 'dnw' : null);
  if (odd !== null) return { peg, status: odd, nets: [] };
  const silvers = { part: 'silvers', lb: 1 + ((i * 5) % 7), oz: (i * 3) % 16, dr: (i % 2) * 8 };
  const carp = { part: 'carp', lb: 8 + ((i * 7) % 23), oz: (i * 5) % 16, dr: 0 };
  return { peg, status: 'weighed', nets: i % 3 === 0 ? [silvers] : [silvers, carp] };
}

const dramsOf = (nets: Bag['nets']) => nets.reduce((sum, { lb, oz, dr }) => sum + lb * 256 + oz * 16 + dr, 0);
/** A weight as the log writes it, in drams. */
const writtenDrams = (written: string) => {
  const [lb = 0, oz = 0, dr = 0] = written.split('-').map(Number);
  return lb * 256 + oz * 16 + dr;
};

function logRows(): Record<string, string>[] {
  const [head = '', ...rows] = readFileSync(join(venue, 'sessions/2026/sessions.csv'), 'utf8').trim().split('\n');
  const columns = head.split(',');
  return rows
    .map((row) => Object.fromEntries(row.split(',').map((cell, i) => [columns[i]!, cell])))
    .filter(({ event }) => EVENTS.includes(event!));
}

/** What the workings of a built guide say went into them. */
function workings(site: string): { readonly events: number; readonly sessions: number } {
  const text = readFileSync(join(site, 'workings/index.html'), 'utf8')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');
  const number = (pattern: RegExp) => Number(pattern.exec(text)?.[1]?.replace(',', ''));
  return {
    events: number(/What went in ([\d,]+) events from/),
    sessions: number(/All sessions in the log ([\d,]+)/),
  };
}

beforeAll(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'peg-atlas-whole-day-'));
  venue = join(scratch, 'venue');
  cpSync(join(PROJECT, 'content'), venue, { recursive: true });
  cpSync(venue, join(scratch, 'other'), { recursive: true });
});
afterAll(async () => {
  await one?.close();
  await two?.close();
  host?.close();
  rmSync(scratch, { recursive: true, force: true });
});

describe('a match of forty pegs, from the plan to the guide built anew', () => {
  it('is planned alike on two machines, and the plan stands up to a check', () => {
    for (const folder of [venue, join(scratch, 'other')]) {
      const planned = command(folder, ...PLAN, '--apart', '8 m', '--yes');
      expect(planned.stderr).toContain(`Wrote ${FILE}`);
    }
    const text = readFileSync(join(venue, FILE), 'utf8');
    expect(readFileSync(join(scratch, 'other', FILE), 'utf8')).toBe(text);
    // The organiser writes the rest by hand.
    writeFileSync(
      join(venue, FILE),
      text.replace(
        'status: planned',
        'places: 8\npot: [50, 30, 20]\ndraw: 08:30\nall-in: 10:00\nall-out: 15:00\nstatus: planned',
      ),
    );
    expect(command(venue, 'check').status).toBe(0);
    sections = [...text.matchAll(/^ {2}[A-Z]: \[(.*)\]$/gm)].map(([, pegs = '']) => pegs.split(', '));
    expect(sections.map(({ length }) => length)).toEqual([8, 8, 8, 8, 8]);
    bags = sections.flat().map(bagOf);
    expect(new Set(bags.map(({ peg }) => peg)).size).toBe(40);
  });

  it('opens without a host on both phones, one of them with a clock a year ahead', async () => {
    expect(command(venue, 'build', '--out', join(scratch, 'guide')).status).toBe(0);
    host = await TamperedHost.of(join(scratch, 'guide'));
    const address = `${host.address}matches/${MATCH}/day/`;
    one = new ScalePhone(join(scratch, 'phone-one'), address, '2026-12-13T07:40:00Z');
    two = new ScalePhone(join(scratch, 'phone-two'), address, '2027-12-13T15:05:00Z');
    for (const phone of [one, two]) {
      await phone.start();
      await phone.keepsAll('matches/');
    }
    host.close();
    for (const phone of [one, two]) await phone.killAndStart();
    expect(await one.page.textContent('#day-clock')).toBe('');
    expect(await two.page.textContent('#day-clock')).toContain('By this phone’s clock it is 13 Dec 2027');
  }, 600_000);

  it('draws: from the bag as pulled and by the phone, with a double, a withdrawal, somebody late, and a kill in a name', async () => {
    const { length } = bags;
    for (let i = 0; i < length - 1; i++) {
      await one.page.fill('[name="entry"]', nameOf(i));
      await one.noted(() => one.page.press('[name="entry"]', 'Enter'));
      if (i === 11) {
        await one.page.locator('[name="entry"]').pressSequentially('Half a na');
        await expect.poll(() => one.page.inputValue('[name="entry"]')).toBe('Half a na');
        await one.page.waitForTimeout(300);
        await one.killAndStart();
        expect(await one.page.inputValue('[name="entry"]')).toBe('Half a na');
      }
    }
    const pulled = bags.map(({ peg }) => peg);
    for (let i = length - 1; i > 0; i--) {
      const j = below(i + 1);
      [pulled[i], pulled[j]] = [pulled[j]!, pulled[i]!];
    }
    const short = (peg: string) => `${peg[0]!.toUpperCase()}${peg.slice(peg.indexOf('/') + 1)}`;
    const type = async (i: number, text: string) => {
      await one.page.locator('.entries input').nth(i).fill(text);
      await one.page.locator('.entries input').nth(i).blur();
    };
    for (let i = 0; i < 28; i++) {
      if (i === 3) {
        await type(i, short(pulled[2]!));
        await expect
          .poll(() => one.page.locator('.entries li').nth(i).textContent())
          .toContain(`held by ${nameOf(2)} already`);
        await type(i, 'K99');
        await expect
          .poll(() => one.page.locator('.entries li').nth(i).textContent())
          .toContain('There is no peg “K99”');
      }
      await one.noted(() => type(i, short(pulled[i]!)));
    }
    // One withdraws after the draw, and one comes late and pulls what is in the bag again.
    await one.noted(() => one.page.getByRole('button', { name: 'Withdraws' }).nth(7).click(), 2);
    await one.page.fill('[name="entry"]', 'Lou Latecomer');
    await one.noted(() => one.page.press('[name="entry"]', 'Enter'));
    const late = one.page.locator('.entries li', { hasText: 'Lou Latecomer' }).locator('input');
    await late.fill(short(pulled[7]!));
    await one.noted(() => late.blur());

    await one.page.click('.phone-draw summary');
    await one.noted(() => one.page.getByRole('button', { name: 'Make the secret number' }).click());
    const digest = await one.page.textContent('.digest');
    await one.page.fill('[name="salt"]', 'Blue bucket');
    // Eleven wait; the draw is noted as one thing, or not at all.
    await one.noted(() => one.page.getByRole('button', { name: 'Draw', exact: true }).click(), 12);
    const told = (await one.page.textContent('.phone-draw pre')) ?? '';
    const hash = spawnSync(
      'node',
      [
        '-e',
        "process.stdout.write(require('crypto').createHash('sha256').update(process.argv[1]).digest('hex'))",
        told,
      ],
      { encoding: 'utf8' },
    );
    expect(hash.stdout).toBe(digest);
    const held = await one.page.$$eval('.entries input', (inputs) =>
      inputs.map((input) => (input as HTMLInputElement).value),
    );
    expect(held).toHaveLength(length - 1);
    expect(new Set(held).size).toBe(length - 1);
    expect(await one.page.textContent('#day-draw')).toContain('39 entered, 0 without a peg; 1 of 40 pegs not taken.');
  }, 600_000);

  it('weighs forty pegs on two scales with corrections, killed at random, and loses nothing typed', async () => {
    const half = 20;
    const phones = [one, two];
    // The second scale knows the sections from its own guide, and no name.
    let kills = 0;
    for (const [i, bag] of bags.entries()) {
      const phone = phones[i < half ? 0 : 1]!;
      if (bag.status === 'weighed' && (below(4) === 0 || i === 0 || i === half)) {
        kills++;
        const [first, ...rest] = bag.nets;
        await phone.openPeg(bag.peg);
        await phone.typeNet(first!);
        const isSaved = below(2) === 0;
        if (isSaved) {
          // Struck while it is being noted: it is noted whole, or it stands in the fields.
          await phone.page.evaluate(() => document.querySelector<HTMLElement>('.net-form [type="submit"]')?.click());
          await phone.page.waitForTimeout(below(25));
        }
        await phone.killAndStart();
        await phone.openPeg(bag.peg);
        const nets = await phone.page.locator('.nets li').count();
        if (nets === 0) {
          expect(await phone.typedNet()).toEqual(first);
          await phone.saveNet();
        } else {
          expect([isSaved, nets]).toEqual([true, 1]);
          expect(await phone.page.textContent('.net-form .unsaved')).toBe('');
        }
        for (const net of rest) {
          await phone.typeNet(net);
          await phone.saveNet();
        }
      } else await phone.weigh(bag);
      if (i % 8 === 1 && bag.status === 'weighed') await correct(phone, bag);
    }
    expect(kills).toBeGreaterThan(6);
    // A peg turns out unsafe: its angler sits on a spare one.
    await one.openPeg(bags[2]!.peg);
    await one.page.click('.scale-form summary:has-text("cannot be fished")');
    const spare = await one.page.$eval(
      '.scale-form select',
      (select) => (select as HTMLSelectElement).options[1]!.value,
    );
    await one.page.selectOption('.scale-form select', spare);
    await one.page.fill('.scale-form .field input', 'a board is loose');
    await one.noted(() => one.page.getByRole('button', { name: 'Note the move' }).click());
    bags = bags.map((bag, i) => (i === 2 ? { ...bag, peg: spare } : bag));
    expect(spare.startsWith('eelback/') || spare.startsWith('kiln-pool/')).toBe(true);
  }, 900_000);

  /** A net typed wrong is taken out and put right: what was noted first stays in the history. */
  async function correct(phone: ScalePhone, { peg, nets }: Bag): Promise<void> {
    await phone.openPeg(peg);
    await phone.typeNet({ part: 'carp', lb: 31, oz: 7, dr: 0 });
    await phone.saveNet();
    await phone.noted(() => phone.page.getByRole('button', { name: 'Take out' }).nth(nets.length).click());
    await phone.page.click('.scale-form summary:has-text("changes")');
    const history = await phone.page.locator('.scale-form .history li').allTextContents();
    expect(history).toHaveLength(nets.length + 2);
    expect(history.at(-2)).toContain('31 lb 7 oz, carp');
  }

  it('merges both ways, shows the one peg that both weighed, and both then say the same', async () => {
    const twice = bags[25]!;
    await one.weigh({ peg: twice.peg, status: 'weighed', nets: [{ part: 'carp', lb: 1, oz: 1, dr: 0 }] });
    const before = await two.notesKept();
    const fileTwo = await two.handOver(scratch, 'Hand over without names');
    expect(readFileSync(fileTwo, 'utf8')).not.toContain(NAME);
    expect(await one.take(fileTwo)).toBe(`${before} notes taken.`);
    expect(await one.page.textContent('#day-saved')).toContain('1 to be settled');
    const [right] = twice.nets;
    await one.noted(() => one.page.click(`#settle .wide-button.main:has-text("${right!.lb} lb ${right!.oz} oz")`));
    expect(await one.page.textContent('#day-saved')).not.toContain('to be settled');
    expect(await one.take(fileTwo)).toContain('here already');
    await two.take(await one.handOver(scratch, 'Hand over without names'));
    expect(await two.results()).toEqual(await one.results());
    expect(await two.page.textContent('#day')).not.toContain(NAME);
  }, 300_000);

  it('works out order and points as they are worked out by hand', async () => {
    expect(await one.page.textContent('#day-results')).toContain('All 40 pegs have been to the scales.');
    const counted = bags
      .map((bag, i) => ({ ...bag, section: Math.floor(i / 8), drams: dramsOf(bag.nets) }))
      .filter(({ status }) => status === 'weighed' || status === 'dnw' || status === 'blank');
    const heavier = (bag: (typeof counted)[number], all: typeof counted) =>
      all.filter(({ drams }) => drams > bag.drams).length;
    const level = (bag: (typeof counted)[number], all: typeof counted) =>
      all.filter(({ drams }) => drams === bag.drams).length;
    const shown = new Map(
      (await one.results()).map(([place, peg, , section, points]) => [
        peg!.replace(/^.*→ /, ''),
        { place, section, points },
      ]),
    );
    const pegName = (peg: string) =>
      `${peg.startsWith('eelback') ? 'Eelback' : 'Kiln Pool'} ${peg.slice(peg.indexOf('/') + 1)}`;
    for (const bag of counted) {
      const own = counted.filter(({ section }) => section === bag.section);
      const row = shown.get(pegName(bag.peg));
      const place = heavier(bag, own) + 1;
      const points = bag.drams === 0 ? 8 : place + (level(bag, own) - 1) / 2;
      expect([bag.peg, row?.place, row?.section, row?.points]).toEqual([
        bag.peg,
        String(heavier(bag, counted) + 1),
        `${'ABCDE'[bag.section]} ${place}`,
        String(points),
      ]);
    }
    expect(shown.get(pegName(bags[20]!.peg))).toMatchObject({ place: '', points: '9' });
  }, 300_000);

  it('goes into the log once, a correction replaces, and the guide built anew shows the match in its workings', async () => {
    const before = workings(join(scratch, 'guide'));
    const keys = join(scratch, 'keys');
    const whole = await one.handOver(scratch, 'Hand over with names');
    const taken = command(venue, 'intake', whole, '--yes', '--keys', keys);
    expect(taken.stderr).toContain('Taken in.');
    expect(command(venue, 'intake', whole, '--yes', '--keys', keys).stderr).toContain('nothing new');
    expectLog();
    const [first] = bags.filter(({ status }) => status === 'weighed');
    await one.openPeg(first!.peg);
    await one.noted(() => one.page.getByRole('button', { name: 'Take it all back' }).click());
    const corrected = { ...first!, nets: [{ part: 'silvers', lb: 2, oz: 2, dr: 0 }] };
    await one.weigh(corrected);
    bags = bags.map((bag) => (bag === first ? corrected : bag));
    const again = command(
      venue,
      'intake',
      await one.handOver(scratch, 'Hand over with names'),
      '--yes',
      '--keys',
      keys,
    );
    expect(again.stdout).toContain('corrected');
    expectLog();
    expect(command(venue, 'check').status).toBe(0);
    const guide = join(scratch, 'guide-after');
    expect(command(venue, 'build', '--out', guide).status).toBe(0);
    const page = readFileSync(join(guide, `matches/${MATCH}/index.html`), 'utf8');
    expect(page).toContain('40 pegs in the log');
    expect(page).not.toContain(NAME);
    const after = workings(guide);
    expect([after.events - before.events, after.sessions - before.sessions]).toEqual([EVENTS.length, 40]);
  }, 600_000);

  function expectLog(): void {
    const rows = logRows();
    expect(rows).toHaveLength(40);
    expect(readFileSync(join(venue, 'sessions/2026/sessions.csv'), 'utf8')).not.toContain(NAME);
    expect(rows.filter(({ angler }) => /^a-[0-9a-z]+$/.test(angler!))).toHaveLength(39);
    for (const { peg, status, nets } of bags) {
      const event = `2026-12-13-${peg.slice(0, peg.indexOf('/'))}`;
      const row = rows.find((each) => each.event === event && each.peg === peg.slice(peg.indexOf('/') + 1));
      expect([peg, row?.status]).toEqual([peg, status]);
      const parts = ['silvers', 'carp'].map((part) => dramsOf(nets.filter((net) => net.part === part)));
      if (status === 'weighed') {
        expect([row?.weight, row?.silvers_weight, row?.carp_weight].map((cell) => writtenDrams(cell!))).toEqual([
          dramsOf(nets),
          ...parts,
        ]);
      } else expect([row?.weight, row?.silvers_weight, row?.carp_weight]).toEqual(['', '', '']);
    }
  }
});
