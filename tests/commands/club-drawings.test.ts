import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { zipSync } from 'fflate';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { run } from '../../src/commands/import.ts';
import { loadVenue } from '../../src/content/load-venue.ts';
import { venueOnDisk } from './intake/venue-on-disk.ts';
import { recordedIo } from './recorded-io.ts';

/**
 * What three phones and two drawing programs give of one small water, invented, in the shapes that GPX 1.0 and 1.1, KML 2.2 and
 * GeoJSON (RFC 7946) allow and that such programs write (common practice, no source). The water's south bank is the line 52.75 N.
 */
let folder: string;
let home: string;
beforeEach(() => {
  folder = venueOnDisk();
  home = dirname(folder);
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const PHONES = {
  'GPX 1.0, with heights, symbols and noughts before the numbers': {
    file: 'Waypoints_01.gpx',
    text: `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.0" creator="a phone" xmlns="http://www.topografix.com/GPX/1/0">
<time>2026-10-03T08:00:00Z</time>
<wpt lat="52.74999" lon="-0.0507"><ele>1.2</ele><time>2026-10-03T08:01:00Z</time><name>041</name><sym>Flag, Blue</sym></wpt>
<wpt lat="52.74999" lon="-0.0505"><ele>1.1</ele><name>PEG 042</name><sym>Flag, Blue</sym></wpt>
<wpt lat="52.7499" lon="-0.0513"><ele>1.1</ele><name>Car Park</name><sym>Parking Area</sym></wpt>
</gpx>`,
    answers: {},
    pegs: { '41': [52.74999, -0.0507], '42': [52.74999, -0.0505] },
    map: ['car-park Car Park'],
    left: [],
  },
  'GPX 1.1, with notes, a walk and its extensions': {
    file: 'walk.gpx',
    text: `<gpx version="1.1" creator="another phone" xmlns="http://www.topografix.com/GPX/1/1" xmlns:x="urn:example:x">
<metadata><name>Sunday walk</name></metadata>
<wpt lat="52.749990" lon="-0.050700"><name>Peg 41 (by the willow)</name><cmt>steep here</cmt><extensions><x:accuracy>4</x:accuracy></extensions></wpt>
<wpt lat="52.749990" lon="-0.050300"><name>43a</name></wpt>
<wpt lat="52.749980" lon="-0.050100"><name>ring</name><desc>throw line on a post</desc></wpt>
<trk><name>Track 3</name><trkseg><trkpt lat="52.7499" lon="-0.0513"><ele>1</ele></trkpt><trkpt lat="52.7499" lon="-0.0500"><ele>1</ele></trkpt></trkseg></trk>
</gpx>`,
    answers: { 'what is Track 3': 'path' },
    pegs: { '41': [52.74999, -0.0507], '43a': [52.74999, -0.0503] },
    map: ['path Track 3', 'throw-line ring'],
    left: [],
  },
  'GPX with a point taken twice, one in doubt and one without a number': {
    file: 'pegs saved.gpx',
    text: `<?xml version="1.0"?><gpx version="1.1" creator="a third phone" xmlns="http://www.topografix.com/GPX/1/1">
<wpt lat="52.74999" lon="-0.0507"><name>Swim 41</name></wpt>
<wpt lat="52.75001" lon="-0.0507"><name>swim 41</name></wpt>
<wpt lat="52.74999" lon="-0.0503"><name>44?</name></wpt>
<wpt lat="52.74999" lon="-0.0501"><name>Dropped pin</name></wpt>
</gpx>`,
    answers: {
      'points of mill-pond/41': 'mean',
      'what is 44?': 'peg',
      'peg of 44?': '44',
      'what is Dropped pin': 'leave',
    },
    pegs: { '41': [52.75, -0.0507], '44': [52.74999, -0.0503] },
    map: [],
    left: ['pegs saved.gpx, "Dropped pin": a point: left, as was answered'],
  },
} as const;

const KML = `<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2"><Document><name>Our water</name>
<Style id="blue"><LineStyle><color>ffff0000</color><width>3</width></LineStyle><PolyStyle><fill>0</fill></PolyStyle></Style>
<Folder><name>Shapes</name>
<Placemark><name>Lily bed</name><styleUrl>#blue</styleUrl><MultiGeometry>
<Polygon><outerBoundaryIs><LinearRing><coordinates>-0.0509,52.7502,0 -0.0508,52.7502,0 -0.0508,52.7503,0 -0.0509,52.7502,0</coordinates></LinearRing></outerBoundaryIs></Polygon>
<Polygon><outerBoundaryIs><LinearRing><coordinates>-0.0507,52.7502,0 -0.0506,52.7502,0 -0.0506,52.7503,0 -0.0507,52.7502,0</coordinates></LinearRing></outerBoundaryIs></Polygon>
</MultiGeometry></Placemark>
<Placemark><name>Heron island</name><styleUrl>#blue</styleUrl><LineString><tessellate>1</tessellate><coordinates>-0.0502,52.7503,0 -0.0501,52.7503,0 -0.0501,52.7504,0 -0.0502,52.7503,0</coordinates></LineString></Placemark>
<Placemark><name>33kV</name><description><![CDATA[<b>pylons</b> at both ends]]></description><LineString><coordinates>-0.056,52.755,9 -0.044,52.755,9</coordinates></LineString></Placemark>
</Folder></Document></kml>`;

const GEOJSON = JSON.stringify({
  type: 'FeatureCollection',
  features: [
    {
      type: 'Feature',
      properties: {
        name: 'Norfolk reeds',
        stroke: '#00ff00',
        'stroke-width': 2,
        fill: '#00ff00',
        'fill-opacity': 0.5,
        styleUrl: '#x',
      },
      geometry: {
        type: 'MultiPolygon',
        coordinates: [-0.0509, -0.0505].map((lng) => [
          [
            [lng, 52.7505],
            [lng + 0.0001, 52.7505],
            [lng + 0.0001, 52.7506],
            [lng, 52.7505],
          ],
        ]),
      },
    },
    {
      type: 'Feature',
      properties: {
        name: 'Peg 45',
        'marker-color': '#7e7e7e',
        'marker-size': 'medium',
        'marker-symbol': 'fishing',
        description: '',
      },
      geometry: { type: 'Point', coordinates: [-0.0501, 52.74999, 3.2] },
    },
    {
      type: 'Feature',
      properties: { name: 'Bottom gate' },
      geometry: { type: 'Point', coordinates: [-0.0499, 52.7498] },
    },
    { type: 'Feature', properties: { name: 'nothing' }, geometry: null },
  ],
});

const DRAWINGS = {
  'KMZ with folders, styles, several shapes in one and a closed line': {
    file: 'drawing.kmz',
    text: zipSync({ 'doc.kml': new TextEncoder().encode(KML), 'files/icon.png': new Uint8Array([1, 2, 3]) }),
    answers: {},
    pegs: {},
    map: ['lilies Lily bed', 'lilies Lily bed', 'island Heron island', 'overhead-line 33kV'],
    left: [],
  },
  'GeoJSON with colours, markers, several parts and a thing without a place': {
    file: 'map.geojson',
    text: GEOJSON,
    answers: {},
    pegs: { '45': [52.74999, -0.0501] },
    map: ['reeds Norfolk reeds', 'reeds Norfolk reeds', 'gate Bottom gate'],
    left: ['map.geojson, "nothing": a thing without a position: it has no geometry that can be read'],
  },
} as const;

const drawn = (): readonly string[] =>
  (
    JSON.parse(readFileSync(join(folder, 'waters/mill-pond.geojson'), 'utf8')) as {
      features: { properties: { kind: string; name?: string } }[];
    }
  ).features.map(({ properties }) => `${properties.kind} ${properties.name ?? ''}`);

test.each(Object.entries({ ...PHONES, ...DRAWINGS }))(
  'reads %s',
  async (_, { file, text, answers, pegs, map, left }) => {
    writeFileSync(join(home, file), text);
    writeFileSync(join(home, 'answers.yaml'), JSON.stringify({ all: answers }));
    const before = { map: drawn(), pegs: new Set((await loadVenue(folder)).venue!.pegs.map(({ peg }) => peg)) };
    const io = recordedIo({ VENUE_DIR: folder, HOME: home });
    const code = await run(['places', join(home, file), '--answers', join(home, 'answers.yaml'), '--yes'], io);
    expect([code, io.errors.join('\n')]).toEqual([0, expect.anything()]);
    const { venue, faults } = await loadVenue(folder);
    expect(faults.filter(({ severity }) => severity === 'error')).toEqual([]);
    const added = venue!.pegs.filter(({ peg }) => !before.pegs.has(peg));
    expect(Object.fromEntries(added.map(({ peg, at }) => [peg, [at.lat, at.lng]]))).toEqual(pegs);
    expect(drawn().slice(before.map.length)).toEqual(map);
    const told = io.errors.join('\n');
    for (const line of left) expect(told).toContain(line);
  },
);
