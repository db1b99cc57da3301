import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { CommandIo } from '../../src/commands/command-io.ts';
import { run } from '../../src/commands/import.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import type { Water } from '../../src/domain/map.ts';
import { destination } from '../../src/ground/geodesy/destination.ts';
import { bytesOf, venueOnDisk } from './intake/venue-on-disk.ts';

let folder: string;
let home: string;
let water: Water;

beforeEach(async () => {
  folder = venueOnDisk();
  home = dirname(folder);
  water = (await loadVenue(folder)).venue!.waters[0]!;
});

afterEach(() => rmSync(home, { recursive: true, force: true }));

async function places(files: readonly string[], answers?: readonly string[]) {
  const lines: string[] = [];
  const left = [...(answers ?? [])];
  const io: CommandIo = {
    environment: { VENUE_DIR: folder, HOME: home },
    print: (line) => lines.push(line),
    printError: (line) => lines.push(line),
    isTerminal: answers !== undefined,
    ...(answers === undefined ? {} : { ask: async () => left.shift() ?? '' }),
  };
  const code = await run(['places', ...files, ...(answers === undefined ? ['--yes'] : [])], io);
  return { code, said: lines.join('\n') };
}

function file(name: string, content: string | Uint8Array): string {
  writeFileSync(join(home, name), content);
  return join(home, name);
}

/** A place on the shore of the small venue, and one some metres inland of it. */
function ashore(metres = 0) {
  const corner = water.map.outline[0]!;
  const next = water.map.outline[1]!;
  const at = { lat: (corner.lat + next.lat) / 2, lng: (corner.lng + next.lng) / 2 };
  return metres === 0 ? at : destination(at, 0, metres);
}

const gpx = (body: string): string =>
  `<?xml version="1.0"?><gpx version="1.1" creator="a phone" xmlns="http://www.topografix.com/GPX/1/1">${body}</gpx>`;
const point = ({ lat, lng }: { lat: number; lng: number }, name: string): string =>
  `<wpt lat="${lat}" lon="${lng}"><name>${name}</name></wpt>`;
const record = (peg: string): string => readFileSync(join(folder, `pegs/mill-pond/${peg}.md`), 'utf8');

describe('import places', () => {
  it('makes a record of a new peg that faces the water, from a phone’s point', async () => {
    const { code, said } = await places([file('walk.gpx', gpx(point(ashore(), 'Peg 041')))]);
    expect(said).toMatch(/pegs\/mill-pond\/41\.md: a new peg, facing [\d.]+° by the shore as drawn/);
    expect(record('41')).not.toContain('facing');
    expect(code).toBe(0);
    const { venue, faults } = await loadVenue(folder);
    expect(faults.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(faults.filter(({ rule, file }) => rule === 'peg-outlook' && file.endsWith('41.md'))).toEqual([]);
    expect(venue!.pegs.find(({ peg }) => peg === '41')?.isFacingEstimated).toBe(true);
  });

  it('moves a known peg and changes no other byte of its record', async () => {
    const before = record('1');
    const { said } = await places([file('walk.gpx', gpx(point(ashore(1), 'Peg 1')))]);
    expect(said).toMatch(/pegs\/mill-pond\/1\.md: moved [\d.]+ m/);
    const changed = record('1').split('\n');
    const differing = before.split('\n').flatMap((line, index) => (line === changed[index] ? [] : [line]));
    expect(differing).toEqual([expect.stringMatching(/^position:/)]);
  });

  it('adds nothing when the same points come again', async () => {
    const walk = file('walk.gpx', gpx(`${point(ashore(), 'Peg 41')}${point(ashore(40), 'Car park')}`));
    await places([walk]);
    const before = bytesOf(folder);
    expect((await places([walk])).said).toContain('nothing was changed');
    expect(bytesOf(folder)).toEqual(before);
  });

  it('asks of two points for one peg, of a doubtful number and of a walk, and lists what is left', async () => {
    const walk = gpx(
      `${point(ashore(), 'Peg 41')}${point(ashore(3), 'peg 41')}${point(ashore(1), '25?')}<trk><name>Track 3</name><trkseg><trkpt lat="${ashore().lat}" lon="${ashore().lng}"/><trkpt lat="${ashore(9).lat}" lon="${ashore(9).lng}"/></trkseg></trk>`,
    );
    const closed = await places([file('walk.gpx', walk)]);
    expect(closed.code).toBe(1);
    expect(closed.said).toContain('What is "25?"?');
    expect(closed.said).toContain('walked with a phone');
    const open = await places([file('walk.gpx', walk)], ['leave', 'leave', 'first', 'y']);
    expect(open.code).toBe(0);
    expect(open.said).toContain('left, as was answered');
  });

  it('reads KML and KMZ, passes styles over, and fetches nothing', async () => {
    const [a, b] = [ashore(60), ashore(80)];
    const kml = `<kml xmlns="http://www.opengis.net/kml/2.2"><Document><Style id="s"><LineStyle><color>ff0000ff</color></LineStyle></Style><Placemark><name>11kV line</name><styleUrl>#s</styleUrl><LineString><coordinates>${a.lng - 0.001},${a.lat},0 ${b.lng + 0.001},${b.lat},0</coordinates></LineString></Placemark><NetworkLink><Link><href>http://127.0.0.1:1/x.kml</href></Link></NetworkLink></Document></kml>`;
    const { said } = await places([file('drawing.kmz', zipSync({ 'doc.kml': new TextEncoder().encode(kml) }))]);
    expect(said).toContain('overhead line "11kV line": drawn');
    expect(said).toContain('1 network link: it points to a file elsewhere, and nothing is fetched');
  });

  it('never takes an overhead line away: a second drawing stands beside the first', async () => {
    const line = (north: number): string => {
      const [a, b] = [ashore(north), ashore(north)];
      return JSON.stringify({
        type: 'FeatureCollection',
        features: [
          {
            type: 'Feature',
            properties: { kind: 'overhead-line', name: 'The wires', stroke: '#ff0000' },
            geometry: {
              type: 'LineString',
              coordinates: [
                [a.lng - 0.001, a.lat],
                [b.lng + 0.001, b.lat],
              ],
            },
          },
        ],
      });
    };
    await places([file('a.geojson', line(90))]);
    const { said } = await places([file('b.geojson', line(120))]);
    expect(said).toContain('drawn beside the line that is there, which stays; both count');
    const lines = (await loadVenue(folder)).venue!.waters[0]!.map.overheadLines.filter(
      ({ name }) => name === 'The wires',
    );
    expect(lines).toHaveLength(2);
  });

  it('refuses a line that puts an open peg inside the stand-off, and writes nothing', async () => {
    const before = bytesOf(folder);
    const peg = (await loadVenue(folder)).venue!.pegs.find(({ status }) => status === 'open')!;
    const kml = `<kml xmlns="http://www.opengis.net/kml/2.2"><Placemark><name>Wires</name><LineString><coordinates>${peg.at.lng - 0.001},${peg.at.lat} ${peg.at.lng + 0.001},${peg.at.lat}</coordinates></LineString></Placemark></kml>`;
    const { code, said } = await places([file('wires.kml', kml)]);
    expect(code).toBe(1);
    expect(said).toContain('(stand-off)');
    expect(bytesOf(folder)).toEqual(before);
  });

  it('takes a table with grid references', async () => {
    const { said } = await places([file('pegs.csv', 'Peg;Grid ref\n44;nowhere\n')]);
    expect(said).toContain('no position that can be read');
  });

  it.each([
    ['broken XML', 'x.gpx', '<gpx><wpt lat="1"', 'x.gpx is broken as XML'],
    ['a document type', 'x.kml', '<!DOCTYPE a [<!ENTITY b "c">]><kml/>', 'declares a document type'],
    ['another XML', 'x.gpx', '<svg/>', 'begins with <svg>, expected GPX or KML'],
    ['broken JSON', 'x.geojson', '{"type":', 'x.geojson is broken as JSON'],
    ['a text', 'x.txt', 'hello', 'expected GPX, KML, KMZ, GeoJSON, or a table'],
  ])('refuses %s in words', async (_, name, content, sentence) => {
    const { code, said } = await places([file(name, content)]);
    expect(code).toBe(1);
    expect(said).toContain(sentence);
  });
});
