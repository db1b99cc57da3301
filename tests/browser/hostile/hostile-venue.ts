import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { FORGED_LINES, payload } from './payloads.ts';

/** A text for YAML or JSON. */
const p = () => JSON.stringify(payload());
/** With forged lines. */
const lines = () => JSON.stringify(payload() + FORGED_LINES);
/** A text for a cell, as a spreadsheet or an intake writes it. */
const cell = (text = payload()) => `"${`'${text}`.replaceAll('"', '""')}"`;

/** The role of a contact, by which a gate names who opens it. */
const ROLE = p();

const VENUE = () => `---
name: ${p()}
club: ${p()}
guide-day: 2026-11-21
address: https://club.example/
units: { length: m, weight: lb }
contacts:
  - { role: ${ROLE}, phone: 01632 960100, email: '"><img/src=x/onerror=alert(1)>@evil.example' }
emergency:
  number: "999"
  power-number: "105"
  nearest-town: ${p()}
  postcode: ${p()}
  directions: ${lines()}
  gate-note: ${p()}
bag-parts:
  - { id: silvers, name: ${p()}, species: [${p()}] }
  - { id: carp, name: ${p()}, species: [${p()}] }
features:
  - { id: corner, name: ${p()}, meaning: ${lines()} }
  - { id: reeds, name: ${p()}, meaning: ${p()} }
stand-off: { distance: 30 m, conductor-spread: 2 m, map-error: 3 m }
lines-surveyed: { on: 2026-03-03, by: ${p()}, how: ${p()} }
permitted-reach: { pole: 16 m, cast: 40 m, sector: 90 }
risk-bands:
  - { from: 1, name: ${p()}, meaning: ${p()} }
thresholds:
  - { id: cold-water, value: 15, unit: ${p()}, source: ${p()}, edition: ${p()}, checked-on: 2026-01-10, basis: club }
---

${payload()}

${payload()}
`;

const hazard = (rest: string) => `  - place: ${lines()}
    severity: 2
    likelihood: 3
    action: ${p()}
    control: ${p()}
    found-on: 2026-03-01
    checked-on: 2026-11-01
    found-by: ${p()}
    ${rest}
`;

const WATER = () => `---
name: ${p()}
kind: ${p()}
datum: ${p()}
close-season: none
access: ${p()}
lines-surveyed: { on: 2026-03-03, by: ${p()}, how: ${p()} }
stocked: [{ on: 2026-03-01, what: ${p()}, kg: 200 }]
netted: [{ on: 2026-03-02, what: ${p()}, kg: 20 }]
level-change: [{ on: 2025-06-01, by: 20 cm, why: ${p()} }]
hazards:
${hazard('kind: slippery\n    mapped-as: way')}${hazard('kind: trip')}---

${payload()}
`;

const feature = (kind: string, type: string, coordinates: string, more = '') =>
  `{"type":"Feature","id":"${kind === 'path' ? 'way' : kind}","properties":{"kind":"${kind}","name":${p()}${more}},"geometry":{"type":"${type}","coordinates":${coordinates}}}`;
const box = (west: number, south: number, size = 0.0001) =>
  `[[[${west},${south}],[${west + size},${south}],[${west + size},${south + size}],[${west},${south + size}],[${west},${south}]]]`;

const MAP = () => `{"type":"FeatureCollection","features":[
${[
  feature('outline', 'Polygon', '[[[-0.051,52.75],[-0.0498,52.75],[-0.0498,52.7507],[-0.051,52.7507],[-0.051,52.75]]]'),
  feature('island', 'Polygon', box(-0.0505, 52.7503)),
  feature('overhead-line', 'LineString', '[[-0.056,52.7525],[-0.044,52.7525]]', ',"voltage_kv":11'),
  feature('path', 'LineString', '[[-0.0512,52.74995],[-0.0498,52.74995]]', `,"surface":${p()}`),
  feature('car-park', 'Point', '[-0.0512,52.74996]', `,"note":${p()}`),
  feature(
    'gate',
    'Point',
    '[-0.0512,52.7499]',
    `,"vehicles":true,"locked":"night","opened_by":${ROLE},"note":${p()},"hours":${p()}`,
  ),
  ...['aed', 'throw-line', 'lodge', 'toilet', 'aerator', 'inlet', 'outlet', 'gauge'].map((kind, i) =>
    feature(kind, 'Point', `[${-0.0509 + i * 0.0001},52.7499${i}]`, `,"note":${p()}`),
  ),
  ...['reeds', 'lilies', 'trees', 'snag', 'building'].map((kind, i) =>
    feature(kind, 'Polygon', box(-0.0508 + i * 0.0002, 52.7505)),
  ),
].join(',\n')}
]}
`;

const PEG = (peg: string, lng: number, more: string) => `---
peg: "${peg}"
water: mill-pond
position: { lat: 52.74999, lng: ${lng} }
facing: 0
where: ${p()}
features: [corner]
platform: { kind: ${p()}, condition: ${p()} }
bank: { surface: ${p()} }
access: { step-free: true, path-surface: ${p()} }
${more}
---

${payload()}

## Spring

${payload()}
`;

const KEPT = () => `kept-open: { on: 2026-11-11, by: ${p()}, why: ${p()} }`;
const CLEARED = () => `cleared-on: 2026-11-12\n    cleared-by: ${p()}\n    cleared-why: ${p()}`;
const EVENTS = () => `event,date,water,kind,hours,listing,frame_places,fished,water_temperature,wind_from,wind_speed,sky
2026-05-02-mill-pond,2026-05-02,mill-pond,match,5,full,1,3,14.5,SW,3,${cell()}
`;
const SESSIONS =
  () => `event,section,peg,angler,status,weight,silvers_weight,silvers_count,carp_weight,carp_count,spot,method,bait,lines
2026-05-02-mill-pond,A,1,a-7f3k9q,weighed,23-08,3-08,40,20-00,6,${cell()},${cell()},${cell()},2
2026-05-02-mill-pond,A,2,a-2b8c4d,weighed,10 lb 4 oz,,,,,,,,
2026-05-02-mill-pond,A,10,a-9x9x9x,dnw,,,,,,,,,
`;
const ROUND =
  () => `entry,water,peg,status,platform,hazard,place,action,severity,likelihood,level,note,by,control,why,title,mapped_as
visit,mill-pond,1,open,${cell()},,,,,,,${cell()},,,,,
hazard-found,mill-pond,2,,,trip,${cell()},${cell()},2,2,,${cell()},,,,,
gauge,mill-pond,,,,,,,,,-0.05,${cell()},,,,,
`;
const MATCH = () => `---
name: ${p()}
date: 2026-12-06
waters: [mill-pond]
entries: 2
sections: 1
draw: 08:30
pegs: { A: [mill-pond/2, mill-pond/10] }
---

${payload()}
`;
const NOTICE = (kind: string, rest: string) => `---
title: ${p()}
kind: ${kind}
from: 2026-11-02
until: 2026-12-01
${rest}
---

${payload()}
`;

/** Draws a picture that would run a script where it is shown as a page. */
const PICTURE = `<svg xmlns="http://www.w3.org/2000/svg" width="40" height="30" onload="alert(1)"><script>alert(1)</script><rect width="40" height="30" fill="#465"/><image href="https://evil.example/a.png" width="1" height="1"/></svg>`;

/** Writes a venue whose every text field holds every payload. */
export function writeHostileVenue(folder: string): void {
  const photo = `photos: [{ file: swim.svg, alt: ${p()}, credit: ${p()} }]`;
  const files: Readonly<Record<string, string>> = {
    'venue.md': VENUE(),
    'waters/mill-pond.md': WATER(),
    'waters/mill-pond.geojson': MAP(),
    'pegs/mill-pond/1.md': PEG(
      '1',
      -0.0509,
      `status: closed\nstatus-reason: ${p()}\nstatus-since: 2026-10-01\n${photo}\nhazards:\n${hazard('kind: other')}`,
    ),
    'pegs/mill-pond/2.md': PEG(
      '2',
      -0.0506,
      `status: open\nmeasured-line-distance: { distance: 250 m, measured-on: 2026-05-01, method: ${p()} }\nhazards:\n${hazard(`kind: algae-scum\n    ${KEPT()}`)}${hazard(`kind: trip\n    ${CLEARED()}`)}`,
    ),
    'pegs/mill-pond/10.md': PEG('10', -0.0502, `status: open\nhazards:\n${hazard('kind: wasps-bees')}`),
    'pegs/mill-pond/s-0000aaaa.md': `---
id: s-0000aaaa
water: mill-pond
position: { lat: 52.74999, lng: -0.0500 }
facing: 0
status: closed
status-reason: ${p()}
status-since: 2025-01-01
was: [{ peg: "11", until: 2025-01-01 }]
retired: { from: 2025-01-02, why: ${p()} }
---
`,
    'notices/2026-11-02-boards-off.md': NOTICE('hazard', 'pegs: [mill-pond/2]'),
    'notices/2026-11-03-closed.md': NOTICE('closure', 'pegs: [mill-pond/10]'),
    'notices/2026-11-04-news.md': NOTICE('news', 'waters: [mill-pond]'),
    'rounds/2026-11-12-k7q2.csv': ROUND(),
    'matches/2026-12-06-winter.md': MATCH(),
    'leagues/winter.md': `---\nname: ${p()}\nmatches: [2026-12-06-winter]\n---\n\n${payload()}\n`,
    'sessions/2026/events.csv': EVENTS(),
    'sessions/2026/sessions.csv': SESSIONS(),
    'soundings/mill-pond.csv': `lat,lng,peg,distance,bearing,depth,date,level
52.7501,-0.0506,,,,1.4,2026-04-01,0.02
,,2,6,,4 ft 6 in,2026-04-01,
`,
    'gauge/mill-pond.csv': 'date,level,water_temperature\n2026-11-12,-5 cm,8\n',
    'photos/swim.svg': PICTURE,
  };
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
}
