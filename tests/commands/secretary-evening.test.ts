import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { run as importPapers } from '../../src/commands/import.ts';
import { run as start } from '../../src/commands/start.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { type RecordedIo, recordedIo } from './recorded-io.ts';

/** A rehearsed secretary's evening: a water of 30 pegs, twelve matches, a drawing and a finder's log, all invented. */
const PEGS = 30;
const MATCHES = 12;
const RING = [
  [-1.5, 52.5],
  [-1.4955, 52.5],
  [-1.4955, 52.5006],
  [-1.5, 52.5006],
  [-1.5, 52.5],
] as const;

let root: string;
const at = (path: string) => join(root, path);

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'evening-'));
  writeFileSync(
    at('places.geojson'),
    JSON.stringify({ type: 'FeatureCollection', features: [thing('Long Pool', 'Polygon', [RING]), ...pegPoints()] }),
  );
  for (let match = 1; match <= MATCHES; match++) writeFileSync(at(`sheet-${match}.csv`), sheet(match));
  writeFileSync(
    at('depths.csv'),
    `lat,lon,depth (m),date\n${[1, 2, 3, 4].map((row) => `52.5002,${-1.5 + row * 0.001},1.${row}0,2026-11-10`).join('\n')}\n`,
  );
});
afterEach(() => rmSync(root, { recursive: true }));

function thing(name: string, type: string, coordinates: unknown) {
  return { type: 'Feature', properties: { name }, geometry: { type, coordinates } };
}

function pegPoints() {
  return Array.from({ length: PEGS }, (_, index) =>
    thing(`Peg ${index + 1}`, 'Point', [-1.49995 + index * 0.00014, 52.49999]),
  );
}

function sheet(match: number): string {
  const names = [
    'Ash Reedling',
    'Bob Sallow',
    'Cy Withy',
    'Di Osier',
    'Ed Bulrush',
    'Flo Sedge',
    'Gus Alderman',
    'Hal Willows',
  ];
  const rows = names.map(
    (name, index) => `${index + 1};${((index * 3 + match) % PEGS) + 1};${name};${30 - index * 2}-0${match % 8}`,
  );
  return [`Long Pool open ${match} ${['May', 'June', 'July'][match % 3]} 2026;;;`, 'Pos;Peg;Name;Weight', ...rows].join(
    '\n',
  );
}

/** A terminal at which the first answer that fits is typed: what was told to be likely, else what the list says. */
function secretary(
  answers: Readonly<Record<string, string>>,
): RecordedIo & { typed: { keys: number; decisions: number } } {
  const typed = { keys: 0, decisions: 0 };
  const io = recordedIo();
  const ask = async (question: string): Promise<string> => {
    const asked = `${io.errors.slice(-12).join('\n')}\n${question}`;
    const word = Object.entries(answers)
      .map(([about, answer]) => ({ at: asked.lastIndexOf(about), answer }))
      .sort((a, b) => b.at - a.at)[0];
    const answer = word === undefined || word.at === -1 ? '' : word.answer;
    typed.keys += answer.length + 1;
    typed.decisions += 1;
    return answer;
  };
  return Object.assign(io, { ask, typed });
}

test('an evening’s typing is a small part of writing the folder by hand, and gives the same pegs and matches', async () => {
  const io = secretary({
    'Which waters': 'Long Pool',
    'Which pegs has': String(PEGS),
    'venue called': 'Alder Lakes',
    'Which club': 'Alder Vale AS',
    'measure lengths': 'm',
    'the club weigh': 'lb',
    'weighed apart': 'none',
    'electric lines': 'not-looked',
    'everybody who fished': 'full',
    'places framed': '3',
    'hours were fished': '5',
    'above its datum': 'unknown',
    'Write this?': 'y',
  });
  const venue = ['--venue', at('venue')];
  expect(await start([at('venue'), '--day', '2026-11-20'], io)).toBe(0);
  expect(await importPapers(['places', at('places.geojson'), ...venue], io)).toBe(0);
  const sheets = Array.from({ length: MATCHES }, (_, index) => at(`sheet-${index + 1}.csv`));
  expect([await importPapers(['results', ...sheets, '--keys', at('keys'), ...venue], io), io.errors.slice(-6)]).toEqual(
    [0, expect.anything()],
  );
  expect(await importPapers(['soundings', at('depths.csv'), ...venue], io)).toBe(0);
  const { venue: read, counts } = await loadVenue(at('venue'));
  expect(read).not.toBeNull();
  expect(counts).toMatchObject({ pegs: PEGS, events: MATCHES, sessions: MATCHES * 8 });
  const byHand = readdirSync(at('venue'), { recursive: true, encoding: 'utf8' })
    .map((path) => join(at('venue'), path))
    .filter((path) => statSync(path).isFile() && !path.endsWith('venue.md'))
    .reduce((sum, path) => sum + readFileSync(path, 'utf8').length, 0);
  console.log(`by hand ${byHand} keys; with the commands ${io.typed.keys} keys in ${io.typed.decisions} decisions`);
  expect(io.typed.keys).toBeLessThan(byHand / 10);
});
