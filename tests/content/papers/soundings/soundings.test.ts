import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Asker, NO_ANSWERS } from '../../../../src/content/papers/questions.ts';
import { isJump, median } from '../../../../src/content/papers/soundings/depth-log.ts';
import { readDepthLog } from '../../../../src/content/papers/soundings/read-depth-log.ts';
import { type SoundingsWater, settleSoundings } from '../../../../src/content/papers/soundings/settle-soundings.ts';
import type { Peg } from '../../../../src/domain/peg.ts';
import { destination } from '../../../../src/ground/geodesy/destination.ts';
import { distanceMetres } from '../../../../src/ground/geodesy/geodesic-between.ts';

const MIDDLE = { lat: 52.75, lng: -0.05 };
const ROUND = Array.from({ length: 72 }, (_, index) => destination(MIDDLE, index * 5, 60));
const PEG = { water: 'mill-pond', peg: '1', at: destination(MIDDLE, 180, 60), facingDegrees: 0 } as unknown as Peg;
const WATER: SoundingsWater = {
  id: 'mill-pond',
  name: 'Mill Pond',
  shore: { outline: ROUND, islands: [] },
  pegs: new Map([['1', PEG]]),
  gaugeDays: ['2026-07-12'],
};

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The checksum of NMEA 0183: all characters between $ and *, by exclusive or. */
function sentence(body: string): string {
  const sum = [...body].reduce((xor, character) => xor ^ character.charCodeAt(0), 0);
  return `$${body}*${sum.toString(16).toUpperCase().padStart(2, '0')}`;
}

function degreesMinutes(value: number, digits: number): string {
  const whole = Math.floor(Math.abs(value));
  return `${String(whole).padStart(digits, '0')}${((Math.abs(value) - whole) * 60).toFixed(5).padStart(8, '0')}`;
}

function rmc({ lat, lng }: { lat: number; lng: number }, time: string, status = 'A'): string {
  return sentence(
    `GPRMC,${time},${status},${degreesMinutes(lat, 2)},${lat < 0 ? 'S' : 'N'},${degreesMinutes(lng, 3)},${lng < 0 ? 'W' : 'E'},0.0,0.0,120726,,,A`,
  );
}

function settle(file: string, text: string, answers: Readonly<Record<string, string>> = {}) {
  const asker = new Asker({ ...NO_ANSWERS, all: answers });
  return { ...settleSoundings(readDepthLog(file, bytes(text)), [WATER], asker), asker };
}

describe('NMEA 0183', () => {
  it('reads the sentence that manuals print as their example, and refuses it with another checksum', () => {
    // The GGA example printed in most receivers' manuals (48°07.038' N 11°31.000' E, checksum 47); from memory.
    const gga = '$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47';
    const depth = sentence('SDDPT,2.5,0.3');
    const log = readDepthLog('a.log', bytes(`${gga}\r\n${depth}\r\n`));
    expect(log.depths[0]!.at).toEqual({ lat: expect.closeTo(48.1173, 6), lng: expect.closeTo(11.516666667, 6) });
    expect(log.depths[0]!.depth).toBeCloseTo(2.8, 9);
    const broken = readDepthLog('a.log', bytes(`${gga.replace('*47', '*48')}\r\n${depth}\r\n`));
    expect(broken.depths).toEqual([]);
    expect(broken.unread.map(({ what, why }) => `${what}: ${why}`)).toEqual([
      '1 sentences: their checksum is wrong or missing',
      '1 depths: no valid fix within two seconds',
    ]);
  });

  it('takes depths below the surface as they are and asks how deep a transducer hung', () => {
    const text = [rmc(MIDDLE, '100000'), sentence('SDDBS,8.2,f,2.5,M,1.4,F')].join('\n');
    expect(settle('a.nmea', text).soundings).toMatchObject([{ depthMetres: 2.5, day: '2026-07-12', level: null }]);
    const below = [rmc(MIDDLE, '100000'), sentence('SDDBT,8.2,f,2.5,M,1.4,F')].join('\n');
    expect(settle('a.nmea', below).asker.open.map(({ key }) => key)).toEqual(['transducer']);
    expect(settle('a.nmea', below, { transducer: '0.2 m' }).soundings).toMatchObject([{ depthMetres: 2.7 }]);
  });

  it('leaves out depths while there is no fix', () => {
    const text = [
      rmc(MIDDLE, '100000', 'V'),
      sentence('SDDPT,2.5,0.1'),
      rmc(MIDDLE, '100010'),
      sentence('SDDPT,3.5,0.1'),
    ];
    const { soundings, unread } = settle('a.nmea', text.join('\n'));
    expect(soundings.map(({ depthMetres }) => depthMetres)).toEqual([3.6]);
    expect(unread[0]!.what).toBe('1 depths');
  });
});

describe('tables and GPX', () => {
  it('fixes the places of a table of pegs by distances, in feet and inches', () => {
    const { soundings, asker } = settle('plumb.csv', 'Plumbed 12/07/2026\nPeg;2 m;13 m\n1;4ft6;9 ft\n');
    expect(asker.open).toEqual([]);
    expect(soundings.map(({ depthMetres }) => depthMetres)).toEqual([expect.closeTo(1.3716), expect.closeTo(2.7432)]);
    expect(soundings.map(({ at }) => Math.round(distanceMetres(PEG.at, at)))).toEqual([2, 13]);
  });

  it('asks for day and unit where a finder’s table does not say', () => {
    const { asker } = settle('finder.csv', `Latitude,Longitude,Depth\n${MIDDLE.lat},${MIDDLE.lng},6.5\n`);
    expect(asker.open.map(({ key }) => key)).toEqual(['day', 'unit']);
    const { soundings } = settle(
      'finder.csv',
      `Latitude,Longitude,Depth (ft),Date\n${MIDDLE.lat},${MIDDLE.lng},6.5,2026-07-12\n`,
    );
    expect(soundings[0]!.depthMetres).toBeCloseTo(6.5 * 0.3048, 9);
  });

  it('reads depths from the extensions of a GPX', () => {
    const gpx = `<gpx xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg><trkpt lat="${MIDDLE.lat}" lon="${MIDDLE.lng}"><time>2026-07-12T09:00:00Z</time><extensions><d:depth xmlns:d="urn:x">1.9</d:depth></extensions></trkpt><trkpt lat="${MIDDLE.lat}" lon="${MIDDLE.lng}"/></trkseg></trk></gpx>`;
    const { soundings, unread } = settle('a.gpx', gpx);
    expect(soundings).toMatchObject([{ depthMetres: 1.9, day: '2026-07-12' }]);
    expect(unread[0]!.what).toBe('1 points');
  });

  it('counts what lies outside the water, and asks for the level of a day without a gauge reading', () => {
    const far = destination(MIDDLE, 90, 200);
    const { soundings, unread, asker } = settle(
      'finder.csv',
      `lat,lng,depth m,date\n${MIDDLE.lat},${MIDDLE.lng},2,2026-09-01\n${MIDDLE.lat},${MIDDLE.lng + 0.0001},2,2026-09-01\n${far.lat},${far.lng},2,2026-09-01\n`,
      { 'level 2026-09-01': '-0.1 m' },
    );
    expect(asker.open).toEqual([]);
    expect(soundings.map(({ level }) => level)).toEqual(['-0.1 m', '-0.1 m']);
    expect(unread.map(({ why }) => why)).toEqual(['more than 3 m outside Mill Pond as drawn']);
  });

  it.each(['hello', '<gpx/>', 'a,b\n1,2\n'])('refuses %s in words', (text) => {
    expect(() => readDepthLog('x', bytes(text))).toThrow(RangeError);
  });
});

describe('jumps and thinning', () => {
  it('finds a lost bottom among steady depths, and none on a slope', () => {
    const slope = Array.from({ length: 30 }, (_, index) => 1 + index * 0.05);
    expect(isJump(slope).some(Boolean)).toBe(false);
    expect(isJump(slope.with(12, 9)).flatMap((jumps, index) => (jumps ? [index] : []))).toEqual([12]);
  });

  it('keeps every depth to account: taken, or counted as left out', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.2, max: 6, noNaN: true }), { minLength: 1, maxLength: 60 }), (depths) => {
        const rows = depths.map((depth, index) => {
          const at = destination(MIDDLE, (index * 37) % 360, index % 70);
          return `${at.lat},${at.lng},${depth},2026-07-12`;
        });
        const { soundings, unread } = settle('f.csv', `lat,lng,depth m,date\n${rows.join('\n')}\n`, {
          water: 'mill-pond',
        });
        const left = unread.reduce((sum, { what }) => sum + Number(/^\d+/.exec(what)?.[0] ?? 0), 0);
        expect(soundings.length + left).toBe(depths.length);
      }),
    );
  });

  it('takes the middle', () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 2, 3])).toBe(2.5);
  });
});
