import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { daysBetween } from '../../src/domain/day.ts';
import { checkOf, checkState } from '../../src/domain/due.ts';
import { noticeState } from '../../src/domain/notice-state.ts';
import { pegKey } from '../../src/domain/peg.ts';
import { overheadLinesOf, standOffsOfPeg } from '../../src/ground/stand-off.ts';
import { demoFiles } from './demo-files.ts';
import { demoVenue, GUIDE_DAY } from './demo-venue.ts';
import { CARP_APART_SINCE, RENUMBERED } from './history.ts';

const CONTENT = fileURLToPath(new URL('../../content/', import.meta.url));
const { venue, drawings } = demoVenue();
const files = demoFiles();

const count = <Item>(items: readonly Item[], holds: (item: Item) => boolean) => items.filter(holds).length;

describe('the committed demo venue', () => {
  it('is what the generator writes, byte for byte', () => {
    const committed = readdirSync(CONTENT, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => `${entry.parentPath}/${entry.name}`.slice(CONTENT.length).replace(/^\//, ''));
    expect(committed.sort()).toEqual([...files.keys()].sort());
    const changed = [...files].filter(([path, text]) => readFileSync(`${CONTENT}${path}`, 'utf8') !== text);
    expect(changed.map(([path]) => path)).toEqual([]);
  });

  it('stays below six megabytes', () => {
    const bytes = [...files.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0);
    expect(bytes).toBeLessThan(6_000_000);
  });

  it('says that it is invented', () => {
    expect(venue.settings.invented).toBe(true);
    expect(venue.settings.rulesMarkdown).toContain('invented');
  });

  it('names nobody: contacts are roles, anglers are opaque references', () => {
    for (const session of venue.sessions) expect(session.angler ?? 'a-000000').toMatch(/^a-[a-z0-9]{6}$/);
    for (const contact of venue.settings.contacts) expect(contact.phone ?? '01632 960000').toMatch(/^01632 960\d{3}$/);
  });
});

describe('the demo’s log', () => {
  it('holds 96 pegs on three waters and about 130 events over three full years up to the guide’s day', () => {
    expect(venue.waters).toHaveLength(3);
    expect(venue.pegs).toHaveLength(96);
    expect(venue.events.length).toBeGreaterThan(125);
    expect(venue.events.length).toBeLessThan(140);
    const days = venue.events.map((event) => event.day);
    expect(daysBetween(days[0]!, GUIDE_DAY)).toBeGreaterThan(3 * 365 - 31);
    expect(daysBetween(days[days.length - 1]!, GUIDE_DAY)).toBeLessThan(31);
    expect(new Set(days.map((day) => day.slice(0, 7))).size).toBeGreaterThanOrEqual(35);
  });

  it('holds about 3,500 sessions, a tenth of them or a little less not weighed', () => {
    expect(venue.sessions.length).toBeGreaterThan(3300);
    expect(venue.sessions.length).toBeLessThan(3700);
    const dnwShare = count(venue.sessions, (session) => session.status === 'dnw') / venue.sessions.length;
    expect(dnwShare).toBeGreaterThan(0.08);
    expect(dnwShare).toBeLessThan(0.1);
  });

  it('holds every kind of session and event a club’s sheets hold', () => {
    for (const status of ['weighed', 'blank', 'dnw', 'unlisted', 'absent', 'disqualified']) {
      expect(count(venue.sessions, (session) => session.status === status)).toBeGreaterThan(0);
    }
    for (const kind of ['match', 'pleasure', 'practice']) {
      expect(count(venue.events, (event) => event.kind === kind)).toBeGreaterThan(0);
    }
    expect(count(venue.sessions, (session) => session.angler === undefined)).toBeGreaterThan(50);
    expect(count(venue.sessions, (session) => session.spot !== undefined)).toBeGreaterThan(800);
    expect(count(venue.events, (event) => event.conditions.waterDegreesC === undefined)).toBeGreaterThan(0);
  });

  it('lists only the frame of some events, of some with the draw and of some without', () => {
    const frameOnly = venue.events.filter((event) => event.listing === 'frame');
    const withDraw = frameOnly.filter((event) =>
      venue.sessions.some((session) => session.event === event.id && session.status === 'unlisted'),
    );
    expect(withDraw.length).toBeGreaterThan(2);
    expect(frameOnly.length - withDraw.length).toBeGreaterThan(2);
  });

  it('weighs parts that add up to the bag, carp missing from many winter bags', () => {
    const parted = venue.sessions.filter((session) => session.parts.carp !== undefined);
    expect(parted.length).toBeGreaterThan(2000);
    for (const { weightGrams, parts } of parted) {
      expect(parts.carp!.weightGrams! + parts.silvers!.weightGrams!).toBeCloseTo(weightGrams!, 6);
    }
    const noCarp = (months: readonly string[]) => {
      const bags = parted.filter((session) => months.includes(session.event.slice(5, 7)));
      return count(bags, (bag) => bag.parts.carp!.weightGrams === 0) / bags.length;
    };
    expect(noCarp(['12', '01', '02'])).toBeGreaterThan(0.5);
    expect(noCarp(['06', '07', '08'])).toBeLessThan(0.2);
  });

  it('gives no angler two pegs and no peg two anglers in one event', () => {
    for (const sessions of Map.groupBy(venue.sessions, (session) => session.event).values()) {
      const anglers = sessions.flatMap((session) => session.angler ?? []);
      expect(new Set(anglers).size).toBe(anglers.length);
      expect(new Set(sessions.map((session) => session.peg)).size).toBe(sessions.length);
    }
  });
});

describe('the demo’s bank', () => {
  const lines = overheadLinesOf(venue.waters);

  it('closes the pegs below the 11 kV line and keeps three more open by limits', () => {
    const closed = venue.pegs.filter((peg) => peg.status === 'closed');
    expect(closed.map((peg) => pegKey(peg.water, peg.peg))).toEqual([14, 15, 16, 17, 18].map((n) => `kiln-pool/${n}`));
    for (const peg of closed) {
      expect(peg.statusReason).toContain('11 kV');
      expect(standOffsOfPeg(peg, lines, venue.settings)[0]!.verdict).toBe('inside');
    }
    const limited = venue.pegs.filter((peg) => Object.keys(peg.limits).length > 0);
    expect(limited.map((peg) => peg.peg)).toEqual(['12', '13', '19', '20']);
    const unlimited = limited.map((peg) => standOffsOfPeg({ ...peg, limits: {} }, lines, venue.settings)[0]!.verdict);
    expect(unlimited).not.toContain('clear');
    expect(count(unlimited, (verdict) => verdict === 'inside')).toBeGreaterThanOrEqual(2);
  });

  it('keeps every open peg and all it may sweep outside the stand-off, by the guide’s own gate', () => {
    for (const peg of venue.pegs.filter((candidate) => candidate.status === 'open')) {
      const verdicts = standOffsOfPeg(peg, lines, venue.settings).map((standOff) => standOff.verdict);
      expect(verdicts, pegKey(peg.water, peg.peg)).not.toContain('inside');
    }
  });

  it('knows hazards of many kinds, most checked in time and some not', () => {
    const hazards = venue.pegs.flatMap((peg) => peg.hazards).filter((hazard) => hazard.clearedOn === undefined);
    const kinds = new Set(hazards.map((hazard) => hazard.kind));
    for (const kind of [
      'overhead-line',
      'steep-bank',
      'soft-platform',
      'overhanging-branch',
      'deep-margin',
      'barbed-wire',
    ]) {
      expect(kinds).toContain(kind);
    }
    expect(kinds.size).toBeGreaterThan(12);
    const states = hazards.map((hazard) =>
      checkState(checkOf(hazard.checkedOn, hazard.foundOn, venue.settings.inspection.hazardDays), GUIDE_DAY),
    );
    expect(count(states, (state) => state === 'fresh')).toBeGreaterThan(states.length * 0.75);
    expect(count(states, (state) => state === 'out-of-date')).toBeGreaterThan(4);
  });

  it('walked a dozen rounds, with pegs cut often enough to learn their intervals', () => {
    expect(venue.rounds).toHaveLength(12);
    const cuts = venue.rounds.flatMap((round) => round.entries).filter((entry) => entry.entry === 'cut');
    const byPeg = Map.groupBy(cuts, (cut) => `${cut.water}/${cut.peg}`);
    expect(count([...byPeg.values()], (list) => list.length >= 2)).toBeGreaterThan(50);
  });

  it('has notices of every state on the guide’s day, among them one that another took the place of', () => {
    const states = new Set(venue.notices.map((notice) => noticeState(notice, venue.notices, GUIDE_DAY)));
    expect(states).toContain('live');
    expect(states).toContain('upcoming');
    expect(states).toContain('past');
    expect(states).toContain('replaced');
  });

  it('describes each of its drawings in words of their own', () => {
    expect(drawings.length).toBeGreaterThanOrEqual(12);
    expect(new Set(drawings.map((drawing) => drawing.alt)).size).toBe(drawings.length);
    for (const drawing of drawings) expect(drawing.alt.length).toBeGreaterThan(60);
  });
});

describe('the demo’s peg notes', () => {
  const written = venue.pegs.filter((peg) => peg.notes.length > 0);
  const sentences = written.flatMap((peg) =>
    peg.notes.flatMap((note) => note.markdown.replaceAll(/\s+/g, ' ').split(/(?<=[.!?])\s/)),
  );

  it('are written for at least forty pegs, most of them by season', () => {
    expect(written.length).toBeGreaterThanOrEqual(40);
    expect(count(written, (peg) => peg.notes.some((note) => note.heading !== ''))).toBeGreaterThanOrEqual(40);
    for (const note of written.flatMap((peg) => peg.notes)) {
      if (note.heading !== '') expect(note.months.length, note.heading).toBeGreaterThan(0);
    }
  });

  it('never say one thing twice with the figures changed', () => {
    const bare = sentences
      .map((sentence) => sentence.toLowerCase().replaceAll(/\d+/g, '#'))
      .filter((s) => s.length > 24);
    const twice = bare.filter((sentence, i) => bare.indexOf(sentence) !== i);
    expect(twice).toEqual([]);
  });
});

describe('the demo’s years', () => {
  const { retired = [] } = venue;

  it('number two pegs anew, after one was retired and one was built', () => {
    expect(retired.map(({ was, retired: gone }) => [was?.[0]?.peg, gone?.from])).toEqual([
      ['39', '2024-02-01'],
      ['6', RENUMBERED],
    ]);
    const lake = venue.pegs.filter(({ water }) => water === 'tallyman-lake');
    expect(lake.filter(({ was }) => was !== undefined).map(({ peg, was }) => [peg, was?.[0]?.peg])).toEqual([
      ['5', '4'],
      ['6', '5'],
    ]);
    expect(lake.filter(({ since }) => since !== undefined).map(({ peg }) => peg)).toEqual(['4']);
    const painted = venue.sessions.filter((session) => session.painted !== undefined);
    expect(painted.length).toBeGreaterThan(30);
    for (const { event } of painted) expect(event.slice(0, 10) < RENUMBERED).toBe(true);
    expect(count(venue.sessions, ({ peg }) => peg === retired[1]!.peg)).toBeGreaterThan(10);
  });

  it('cut a lily bed that the log knew, moved a platform, stocked a water and began to weigh carp apart', () => {
    const cut = venue.pegs.filter(({ datedFeatures = [] }) => datedFeatures.some(({ until }) => until !== undefined));
    expect(cut.map(({ water, peg }) => pegKey(water, peg))).toEqual(['eelback/36', 'eelback/37']);
    for (const { features } of cut) expect(features).not.toContain('lilies');
    expect(count(venue.pegs, ({ moved }) => moved?.[0]?.newGround === true)).toBe(1);
    expect(venue.waters.flatMap(({ stocked = [] }) => stocked)).toHaveLength(1);
    const days = new Map(venue.events.map(({ id, day }) => [id, day]));
    const early = venue.sessions.filter(({ event }) => days.get(event)! < CARP_APART_SINCE);
    expect(count(early, ({ parts }) => parts.silvers !== undefined)).toBeGreaterThan(100);
    expect(count(early, ({ parts }) => parts.carp !== undefined)).toBe(0);
  });
});
