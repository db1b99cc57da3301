import { describe, expect, test } from 'vitest';
import { FILE, type FileChange, faultsOf, replacing } from './small-venue.ts';

const HOURS = 'sessions/2026/hours.csv';
const MATCH = 'matches/2026-12-05-december-open.md';
const match = (...lines: readonly string[]) =>
  `---\nname: December Open\ndate: 2026-12-05\nwaters: [mill-pond]\nentries: 2\n${lines.map((line) => `${line}\n`).join('')}---\n`;
const hours = (...rows: readonly string[]) =>
  `event,peg,slip,hour,part,weight\n${rows.map((row) => `2026-05-02-mill-pond,${row}\n`).join('')}`;
const inPeg = (lines: string) => replacing('status: open\n', `status: open\n${lines}`);
const inWater = (lines: string) => replacing('close-season: none\n', `close-season: none\n${lines}`);
const inVenue = (lines: string) => replacing('invented: true\n', `invented: true\n${lines}`);

const RETIRED = 'pegs/mill-pond/s-old1.md';
const retired = (lines: string) =>
  `---\n${lines}water: mill-pond\nposition: { lat: 52.74999, lng: -0.0504 }\nfacing: 0\nfeatures: []\nstatus: closed\n---\n`;
const HAZARD = '  - { kind: algae-scum, place: the pond, severity: 2, likelihood: 3, found-on: 2026-03-01';

/** Twenty events a week apart, and one 200 days after them. */
const GAP_EVENTS = [...Array(20).keys(), 20]
  .map((week, i, all) => new Date(Date.UTC(2025, 0, 4 + 7 * week + (i === all.length - 1 ? 200 : 0))))
  .map((day) => day.toISOString().slice(0, 10))
  .map((day) => `${day}-mill-pond,${day},mill-pond,pleasure,5,frame,0,,,,\n`)
  .join('');

describe('each rule is met by a folder that breaks it, and by its file', () => {
  test.each<readonly [rule: string, file: string, changes: Readonly<Record<string, FileChange>>]>([
    ['csv-header', FILE.gauge, { [FILE.gauge]: ',,\n2026-04-01,0.02,9.5\n' }],
    ['file-faults', FILE.gauge, { [FILE.gauge]: `date,level,water_temperature\n${'2026-04-01\n'.repeat(5001)}` }],
    ['yaml-indent', FILE.venue, { [FILE.venue]: inVenue('emergency-notes:\n  a: b\n c: d\n') }],
    ['yaml-colon', FILE.venue, { [FILE.venue]: replacing('name: Example Fishery', 'name: Example: the Fishery') }],
    ['yaml-syntax', FILE.venue, { [FILE.venue]: inVenue('bag-note: "a" b\n') }],
    ['event-id', FILE.events, { [FILE.events]: replacing('2026-05-02-mill-pond,', '2026 05 02,') }],
    ['log-gap', FILE.events, { [FILE.events]: (text) => text + GAP_EVENTS }],
    ['hazard-place', FILE.water, { [FILE.water]: inWater(`hazards:\n${HAZARD}, mapped-as: no-such-path }\n`) }],
    ['hard-rule-cleared', FILE.water, { [FILE.water]: inWater(`hazards:\n${HAZARD}, cleared-on: 2026-04-01 }\n`) }],
    [
      'platform-overlap',
      FILE.peg,
      {
        [FILE.peg]: inPeg(
          'platform:\n  - { kind: timber, until: 2026-05-01 }\n  - { kind: concrete, from: 2026-04-01 }\n',
        ),
      },
    ],
    ['hours-twice', HOURS, { [HOURS]: hours('1,,1,silvers,1-00', '1,,1,silvers,2-00') }],
    ['hours-weight', HOURS, { [HOURS]: hours('1,,1,total,60-00') }],
    ['part-name', HOURS, { [HOURS]: hours('1,,1,Big Carp,1-00') }],
    ['slip-id', HOURS, { [HOURS]: hours('1,NOT A SLIP,1,silvers,1-00') }],
    ['clock-time', MATCH, { [MATCH]: match('draw: "25:00"') }],
    ['peg-key', MATCH, { [MATCH]: match('leave-out: ["1"]') }],
    [
      'match-water',
      MATCH,
      {
        [MATCH]: match('leave-out: [other-pond/1]'),
        'waters/other-pond.md': (_) =>
          '---\nname: Other Pond\nkind: pit\ndatum: top of the sill\nclose-season: none\n---\n',
        'waters/other-pond.geojson':
          '{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"kind":"outline"},"geometry":{"type":"Polygon","coordinates":[[[-0.041,52.75],[-0.0398,52.75],[-0.0398,52.7507],[-0.041,52.7507],[-0.041,52.75]]]}}]}',
        'pegs/other-pond/1.md':
          '---\npeg: "1"\nwater: other-pond\nposition: { lat: 52.74999, lng: -0.0405 }\nfacing: 0\nfeatures: []\nstatus: open\n---\n',
      },
    ],
    [
      'match-peg-busy',
      'matches/2026-12-05-second.md',
      {
        [MATCH]: match('pegs: { A: [mill-pond/1, mill-pond/2] }'),
        'matches/2026-12-05-second.md': match('pegs: { A: [mill-pond/1, mill-pond/10] }'),
      },
    ],
    [
      'retired-id',
      RETIRED,
      { [RETIRED]: retired('was: [{ peg: "11", until: 2026-01-31 }]\nretired: { from: 2026-02-01 }\n') },
    ],
    ['retired-number', RETIRED, { [RETIRED]: retired('id: s-old1\nretired: { from: 2026-02-01 }\n') }],
  ])('%s in %s', (rule, file, changes) => {
    expect(faultsOf(changes).map((fault) => `${fault.file} ${fault.rule}`)).toContain(`${file} ${rule}`);
  });

  test('and none of them by a folder that keeps them', () => {
    expect(faultsOf({})).toEqual([]);
  });
});
