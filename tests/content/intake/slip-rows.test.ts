import { expect, it } from 'vitest';
import { planSlip, type SlipLog } from '../../../src/content/intake/slip-rows.ts';
import { type FolderFiles, StagedFiles } from '../../../src/content/intake/staged-files.ts';
import type { FishingEvent } from '../../../src/domain/session.ts';
import type { Slip } from '../../../src/match-day/slip.ts';

const SESSIONS = 'sessions/2026/sessions.csv';
const SLIP: Slip = {
  venue: 'Example Water',
  water: 'pool',
  peg: '14',
  day: '2026-12-06',
  match: null,
  hours: 5,
  caught: [{ minute: 12, part: 'carp', grams: 3000 }],
  fed: [],
  depths: [],
  spot: 'margin',
  method: 'pole',
  bait: 'maggot',
  lines: 2,
  waterDegreesC: 6.5,
};

function folder(texts: Readonly<Record<string, string>>): StagedFiles {
  return new StagedFiles({ text: (path: string) => texts[path] ?? null, bytes: () => null } as unknown as FolderFiles);
}

function logWith(weightGrams: number): SlipLog {
  const match = { id: 'm1', day: SLIP.day, water: 'pool', kind: 'match' } as unknown as FishingEvent;
  return {
    venue: SLIP.venue,
    units: { length: 'm', weight: 'kg' },
    bagParts: [{ id: 'carp', name: 'Carp', species: ['common carp'] }],
    events: [match],
    pegsOf: (water) => (water === 'pool' ? ['14'] : []),
    latestDay: '2026-12-07',
    depths: null,
    sessionsOf: () => [{ peg: '14', weightGrams }],
  };
}

const ROWS = { [SESSIONS]: 'event,section,peg,angler,status,weight\nm1,A,14,a1,weighed,3.000\n' };

it('fills the words of a match’s row, leaves its weight, and says that the water’s temperature is left out', () => {
  const files = folder(ROWS);
  const plan = planSlip(SLIP, logWith(3000), files);
  const told = plan.ok ? plan.told.join('\n') : plan.why;
  expect(told).toContain('m1, peg 14: bait “maggot”');
  expect(told).toContain('water 6.5 °C, which is not taken into the log of a match');
  expect(files.text(SESSIONS)).toMatch(/m1,A,14,a1,weighed,3\.000,.*maggot/);
});

it('says nothing of a temperature that was not given, and tells a slip far from the scales', () => {
  const plan = planSlip({ ...SLIP, waterDegreesC: null }, logWith(9000), folder(ROWS));
  const told = plan.ok ? plan.told.join('\n') : plan.why;
  expect(told).not.toContain('°C');
  expect(told).toContain('Is it of this peg? The scales’ weight stays.');
});

it('refuses a slip of another venue or of a peg that is not there', () => {
  expect(planSlip({ ...SLIP, venue: 'Other' }, logWith(1), folder(ROWS)).ok).toBe(false);
  expect(planSlip({ ...SLIP, peg: '99' }, logWith(1), folder(ROWS)).ok).toBe(false);
});

it('refuses a slip of a day that has not come', () => {
  expect(planSlip({ ...SLIP, day: '2026-12-08' }, logWith(1), folder(ROWS))).toEqual({
    ok: false,
    why: 'It is of 2026-12-08, a day that has not come: is the clock of that phone right?',
  });
});
