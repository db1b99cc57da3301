import type { Fault } from '../../src/content/fault.ts';
import { formatFault } from '../../src/content/format-fault.ts';
import { readVenue } from '../../src/content/read-venue.ts';
import { type VenueFiles, venueFiles } from '../../src/content/venue-files.ts';
import type { Venue } from '../../src/domain/venue.ts';

/** A change of one file: its new text, null to take it out, or a function of its text. */
export type FileChange = string | null | ((text: string) => string);

const VENUE = `---
name: Example Fishery
club: Example Angling Club
invented: true
guide-day: 2026-11-21
units: { length: m, weight: lb }
contacts:
  - { role: Bailiff, phone: 01632 960100 }
emergency: { number: "999", power-number: "105" }
bag-parts:
  - { id: silvers, name: Silvers, species: [roach] }
  - { id: carp, name: Carp, species: [common carp] }
features:
  - { id: corner, name: Corner }
  - { id: reeds, name: Reeds }
stand-off: { distance: 30 m, conductor-spread: 2 m, map-error: 3 m }
lines-surveyed: { on: 2026-03-03, by: Bailiff, how: walked with the network operator’s plan }
permitted-reach: { pole: 16 m, cast: 40 m, sector: 90 }
---

Barbless hooks.
`;

const WATER = `---
name: Mill Pond
kind: clay pit
datum: top of the sill
close-season: none
---

Deep along the dam.
`;

const MAP = `{"type":"FeatureCollection","features":[
{"type":"Feature","properties":{"kind":"outline"},"geometry":{"type":"Polygon","coordinates":[[[-0.051,52.75],[-0.0498,52.75],[-0.0498,52.7507],[-0.051,52.7507],[-0.051,52.75]]]}},
{"type":"Feature","properties":{"kind":"island","name":"Swan Island"},"geometry":{"type":"Polygon","coordinates":[[[-0.0505,52.7503],[-0.0503,52.7503],[-0.0503,52.7504],[-0.0505,52.7503]]]}},
{"type":"Feature","id":"line-1","properties":{"kind":"overhead-line","name":"11 kV line","voltage_kv":11},"geometry":{"type":"LineString","coordinates":[[-0.056,52.7525],[-0.044,52.7525]]}},
{"type":"Feature","properties":{"kind":"gate","name":"Road gate","vehicles":true,"locked":"no"},"geometry":{"type":"Point","coordinates":[-0.0512,52.7499]}}
]}
`;

const peg = (name: string, lng: number) => `---
peg: "${name}"
water: mill-pond
position: { lat: 52.74999, lng: ${lng} }
facing: 0
features: [corner]
status: open
hazards:
  - kind: slippery
    place: the steps
    severity: 2
    likelihood: 3
    found-on: 2026-03-01
    checked-on: 2026-11-01
---

Reeds to the left.

## Spring

Feed the margin late.
`;

const EVENTS = `event,date,water,kind,hours,listing,frame_places,fished,water_temperature,wind_from,wind_speed
2026-05-02-mill-pond,2026-05-02,mill-pond,match,5,full,1,3,14.5,SW,3
`;

const SESSIONS = `event,section,peg,angler,status,weight,silvers_weight,silvers_count,carp_weight,carp_count
2026-05-02-mill-pond,A,1,a-7f3k9q,weighed,23-08,3-08,40,20-00,6
2026-05-02-mill-pond,A,2,a-2b8c4d,weighed,10 lb 4 oz,,,,
2026-05-02-mill-pond,A,10,a-9x9x9x,dnw,,,,,
`;

const FILES: Readonly<Record<string, string>> = {
  'venue.md': VENUE,
  'waters/mill-pond.md': WATER,
  'waters/mill-pond.geojson': MAP,
  'pegs/mill-pond/1.md': peg('1', -0.0509),
  'pegs/mill-pond/2.md': peg('2', -0.0506),
  'pegs/mill-pond/10.md': peg('10', -0.0502),
  'notices/2026-11-02-boards-off.md': `---
title: Boards off at peg 2
kind: hazard
from: 2026-11-02
until: 2026-12-01
pegs: [mill-pond/2]
---

Keep off the platform.
`,
  'rounds/2026-11-12-k7q2.csv': `entry,water,peg,status,hazard,place,severity,likelihood,level,note
visit,mill-pond,1,open,,,,,,
hazard-found,mill-pond,2,,trip,the path,2,2,,
gauge,mill-pond,,,,,,,-0.05,
`,
  'sessions/2026/events.csv': EVENTS,
  'sessions/2026/sessions.csv': SESSIONS,
  'soundings/mill-pond.csv': `lat,lng,peg,distance,bearing,depth,date,level
52.7501,-0.0506,,,,1.4,2026-04-01,0.02
,,1,6,,4 ft 6 in,2026-04-01,
`,
  'gauge/mill-pond.csv': `date,level,water_temperature
2026-04-01,0.02,9.5
2026-11-12,-5 cm,
`,
};

/** A tiny, valid venue folder in memory: one water, three pegs, one event. Change what a test is about. */
export function smallVenue(changes: Readonly<Record<string, FileChange>> = {}): VenueFiles {
  const texts = new Map(Object.entries(FILES));
  for (const [path, change] of Object.entries(changes)) {
    const text = typeof change === 'function' ? change(texts.get(path) ?? '') : change;
    if (text === null) texts.delete(path);
    else texts.set(path, text);
  }
  return venueFiles(texts);
}

/** A change that replaces a piece of a file, which must be in it. */
export function replacing(piece: string, by: string): (text: string) => string {
  return (text) => {
    if (!text.includes(piece)) throw new Error(`The file holds no ${JSON.stringify(piece)}.`);
    return text.replace(piece, () => by);
  };
}

/** The checked venue of the small folder. */
export function smallCheckedVenue(changes: Readonly<Record<string, FileChange>> = {}): Venue {
  const { venue, faults } = readVenue(smallVenue(changes));
  if (venue === null) throw new Error(`The small venue has faults: ${JSON.stringify(faults)}`);
  return venue;
}

/** The faults of the small folder with changes. */
export function faultsOf(changes: Readonly<Record<string, FileChange>>): readonly Fault[] {
  return readVenue(smallVenue(changes)).faults;
}

/** The faults of the small folder with changes, as a person reads them. */
export function messagesOf(changes: Readonly<Record<string, FileChange>>): readonly string[] {
  return faultsOf(changes).map(formatFault);
}

export const FILE = {
  venue: 'venue.md',
  water: 'waters/mill-pond.md',
  map: 'waters/mill-pond.geojson',
  peg: 'pegs/mill-pond/1.md',
  notice: 'notices/2026-11-02-boards-off.md',
  round: 'rounds/2026-11-12-k7q2.csv',
  events: 'sessions/2026/events.csv',
  sessions: 'sessions/2026/sessions.csv',
  soundings: 'soundings/mill-pond.csv',
  gauge: 'gauge/mill-pond.csv',
} as const;
