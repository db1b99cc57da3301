import { CLEARANCE_MEASURES } from '../domain/clearance-measures.ts';
import { type Day, yearOf } from '../domain/day.ts';
import { typed } from './typed-command.ts';

/** The rules of a first venue, there to be replaced: an import of the club's own takes their place unasked. */
export const EXAMPLE_RULES = `These are example rules: write your own here, as Markdown. They are published as the rules page.

- Read the peg's own sheet before you set up.
- No fishing within the stand-off of an overhead line.`;

/**
 * A first venue folder of a club's own: one water, two pegs, empty logs. It passes every check as it stands, and says in
 * every file that its figures are examples to replace.
 * @param day the day written as `guide-day`
 * @returns texts by path inside the folder
 */
export function firstVenue(day: Day): ReadonlyMap<string, string> {
  const year = yearOf(day);
  return new Map([
    ['venue.md', firstSettings(day, EXAMPLE)],
    ['waters/first-water.md', WATER],
    ['waters/first-water.geojson', MAP],
    ['pegs/first-water/1.md', peg('1', '-0.02080', 'corner', day)],
    ['pegs/first-water/2.md', peg('2', '-0.02050', 'open-water', day)],
    [
      `sessions/${year}/events.csv`,
      'event,date,water,kind,hours,listing,frame_places,fished,air_temperature,water_temperature,wind_from,wind_speed,sky\n',
    ],
    [
      `sessions/${year}/sessions.csv`,
      'event,section,peg,angler,status,weight,silvers_weight,silvers_count,carp_weight,carp_count,spot,method,bait,lines\n',
    ],
    ['soundings/first-water.csv', 'lat,lng,peg,distance,bearing,depth,date,level\n'],
    ['gauge/first-water.csv', 'date,level,water_temperature\n'],
  ]);
}

/** What of a first `venue.md` is a club's own; each as it stands in YAML. */
export interface FirstSettings {
  readonly name: string;
  readonly club: string;
  readonly units: string;
  readonly scaleDivision: string;
  /** Lines of the list of bag parts. */
  readonly bagParts: readonly string[];
  readonly linesSurveyed: string | null;
}

const EXAMPLE: FirstSettings = {
  name: 'Example Fishery',
  club: 'Example Angling Club',
  units: '{ length: m, weight: lb }',
  scaleDivision: '1 oz',
  bagParts: [
    '  - { id: silvers, name: Silvers, species: [roach, rudd, skimmer] }',
    '  - { id: carp, name: Carp, species: [common carp, mirror carp] }',
  ],
  linesSurveyed: null,
};

/** A first `venue.md`, with notes on every field a club will want. */
export const firstSettings = (day: Day, own: FirstSettings) => `---
# Every name and figure in this folder is an example: replace it with your own, then run
#   ${typed('check --venue FOLDER')}
# A line that begins with # is a note to you and is never published.
name: ${own.name} # the venue
club: ${own.club}
invented: true # take this line out when the folder holds your own venue: until then every page says it is made up
guide-day: ${day} # the day of the data; move it on whenever you add to the folder
# address: https://club.example/guide/ # where you will publish it
units: ${own.units} # what a bare number means: m or ft, kg or lb
contacts:
  - { role: Bailiff, phone: "01632 960000" } # roles, never names
emergency:
  number: "999"
  power-number: "105" # the network operator, in Great Britain
  # pollution-number: "0800 80 70 60" # the Environment Agency, in England
  # postcode: "…"
  # directions: one line for an ambulance
  # nearest-town: the town a call handler will know
bag-parts:${own.bagParts.length === 0 ? ' []' : ''} # what is weighed apart; each makes two columns in sessions.csv
${own.bagParts.map((line) => `${line}\n`).join('')}features: # the words your pegs use
  - { id: corner, name: Corner, meaning: Two banks meet. }
  - { id: open-water, name: Open water, meaning: Nothing in front but water. }
stand-off: { distance: 30 m, conductor-spread: 2 m, map-error: 3 m } # from overhead lines; never below 30 m
# Who looked for overhead lines, when and from what: until somebody has, check warns and every sheet says so.
${own.linesSurveyed === null ? `# lines-surveyed: { on: ${day}, by: Bailiff, how: walked with the network operator’s plan }` : `lines-surveyed: ${own.linesSurveyed}`}
permitted-reach: { pole: 16 m, cast: 40 m, sector: 90 } # how far anybody may fish; the sector in degrees
inspection: { hazard: 28, platform: 90, clearance: 180, rescue-kit: 28, lines: 365 } # days between checks
ratings: { scale-division: ${own.scaleDivision} } # the smallest step of your scales
nesting-months: March to August # no cutting
---

${EXAMPLE_RULES}
`;

const WATER = `---
# Example figures: replace them. The water's name in paths is the name of this file.
name: First Water
kind: match lake # in your own words
datum: top of the outlet sill # what level zero is
close-season: unknown # none, statutory, club or unknown
# access: one line on how to get there
---

What a visitor should know of this water.
`;

const MAP = `{"type":"FeatureCollection","features":[
{"type":"Feature","properties":{"kind":"outline","name":"Example shape: draw your own water instead"},"geometry":{"type":"Polygon","coordinates":[[[-0.021,52.7],[-0.0198,52.7],[-0.0198,52.7007],[-0.021,52.7007],[-0.021,52.7]]]}},
{"type":"Feature","properties":{"kind":"car-park","name":"Car park"},"geometry":{"type":"Point","coordinates":[-0.0214,52.6998]}},
{"type":"Feature","properties":{"kind":"gate","name":"Road gate","vehicles":true,"locked":"no"},"geometry":{"type":"Point","coordinates":[-0.0216,52.6997]}},
{"type":"Feature","properties":{"kind":"path","name":"South bank","surface":"grass"},"geometry":{"type":"LineString","coordinates":[[-0.0214,52.6998],[-0.0208,52.69993],[-0.0205,52.69993]]}}
]}
`;

const peg = (name: string, lng: string, feature: string, day: Day) => `---
# Example figures: replace them. Lines that begin with # are fields you may use.
peg: "${name}"
water: first-water
position: { lat: 52.69999, lng: ${lng} } # or { grid: TF 3383 1320 }
facing: N # degrees from true north, or one of sixteen points
# where: South bank, in the corner
features: [${feature}]
status: open # a closed peg also needs status-reason
# platform: { kind: timber, width: 1.8 m, length: 2.4 m, height: 0.4 m, condition: sound }
# bank: { slope: 1 in 3, height: 0.8 m, surface: grass, steps: 4, handrail: false }
# clearance: { ${CLEARANCE_MEASURES.map(({ key, example }) => `${key}: ${example}`).join(', ')}, measured-on: ${day} }
# access: { step-free: false, path-surface: grass }
# margin-depth: 0.4 m
# limits: { pole: 11 m, cast: 20 m, sector: 60 }
# hazards:
#   - { kind: slippery, place: the steps, severity: 2, likelihood: 3, found-on: ${day} }
---

What those who know this peg would tell a visitor.

## Spring

What holds from March to May. Headings may be seasons, months or ranges such as April to June.
`;
