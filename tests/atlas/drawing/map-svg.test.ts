import { describe, expect, it } from 'vitest';
import { clipRing } from '../../../src/atlas/drawing/clip-ring.ts';
import { locatorSvg } from '../../../src/atlas/drawing/locator.ts';
import { mapPath } from '../../../src/atlas/drawing/map-path.ts';
import { type MapDrawing, mapSvg } from '../../../src/atlas/drawing/map-svg.ts';
import { outlineSvg } from '../../../src/atlas/drawing/outline.ts';
import type { Point } from '../../../src/atlas/drawing/simplify-line.ts';
import { compareDrawing, expectWellFormed } from './compare-drawing.ts';

/** Points of a circle, clockwise on the screen. */
function circle(x: number, y: number, radius: number, count = 24): readonly Point[] {
  return Array.from({ length: count }, (_, i) => {
    const turn = (i / count) * 2 * Math.PI;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)] as const;
  });
}

const MAP: MapDrawing = {
  width: 1600,
  height: 1200,
  label: 'Map of The Pit, north up, with 4 pegs',
  water: circle(700, 600, 420),
  islands: [circle(760, 560, 90)],
  areas: [
    { kind: 'reeds', name: 'North reeds', ring: circle(700, 240, 70) },
    { kind: 'lilies', name: 'lilies', ring: circle(420, 640, 60) },
    { kind: 'trees', name: 'Willows', ring: circle(260, 260, 90) },
  ],
  isobaths: [
    { words: '1 m', lines: [circle(700, 600, 340)] },
    { words: '2 m', lines: [circle(560, 700, 20)] },
  ],
  paths: [
    [
      [0, 1150],
      [1200, 1100],
    ],
  ],
  overheadLines: [
    {
      name: 'Low line',
      line: [
        [1400, 0],
        [1300, 1200],
      ],
    },
  ],
  standOffZones: [
    [
      [
        [1264, 0],
        [1536, 0],
        [1436, 1200],
        [1164, 1200],
      ],
    ],
  ],
  places: [
    { kind: 'car-park', name: 'Lodge car park', x: 120, y: 1100 },
    { kind: 'aed', name: 'Defibrillator', x: 150, y: 1110 },
    { kind: 'throw-line', name: 'Throw line 1', x: 700, y: 1060 },
    { kind: 'aerator', name: 'Paddle', x: 700, y: 600 },
    { kind: 'finding', name: 'Lodge car park: Pot-holes, <deep>', x: 120, y: 1100 },
  ],
  pegs: [
    { peg: '1', href: '/pit/1/', label: 'Peg 1', closed: false, x: 700, y: 1020, facingDegrees: 0 },
    { peg: '2', href: '/pit/2/', label: 'Peg 2, closed', closed: true, x: 1120, y: 600, facingDegrees: 270 },
    { peg: '14a', href: '/pit/14a/', label: 'Peg 14a', closed: false, x: 280, y: 600, facingDegrees: 90 },
    { peg: '3', href: '/pit/3/', label: 'Peg 3', closed: false, x: 720, y: 1020, facingDegrees: 0 },
  ],
  scaleBar: { length: 400, words: '50 m' },
};

describe('mapSvg', () => {
  it('draws the committed map', () => {
    const svg = mapSvg(MAP);
    expectWellFormed(svg);
    compareDrawing('water-map', svg);
  });

  it('makes every peg a link with a name, and a closed one another shape', () => {
    const svg = mapSvg(MAP);
    expect(svg.match(/<a class="m-peg/g)).toHaveLength(4);
    expect(svg).toMatch(
      /<a class="m-peg m-closed" href="\/pit\/2\/" aria-label="Peg 2, closed"[^>]*>(?:(?!<circle|<\/a>).)*<\/a>/,
    );
    expect(svg).toMatch(/<a class="m-peg" href="\/pit\/1\/" aria-label="Peg 1"[^>]*>.*?<circle r="36"\/>/);
  });

  it('parts roundels that would hide one another', () => {
    const middles = [...mapSvg(MAP).matchAll(/class="m-peg[^>]*translate\((-?\d+) (-?\d+)\)/g)].map(([, x, y]) => [
      Number(x),
      Number(y),
    ]);
    const [one, three] = [middles[0]!, middles[3]!];
    expect(Math.hypot(one[0]! - three[0]!, one[1]! - three[1]!)).toBeGreaterThanOrEqual(70);
  });

  it('writes the figure of a depth only on a line long enough to carry it', () => {
    expect([...mapSvg(MAP).matchAll(/class="m-depth"[^>]*>([^<]*)/g)].map(([, words]) => words)).toEqual(['1 m']);
  });

  it('draws a bare water without islands, lines, depths or pegs', () => {
    const bare = {
      ...MAP,
      islands: [],
      areas: [],
      isobaths: [],
      paths: [],
      overheadLines: [],
      standOffZones: [],
      places: [],
      pegs: [],
    };
    expectWellFormed(mapSvg(bare));
  });

  it('lets no name break out of the drawing', () => {
    const svg = mapSvg({ ...MAP, places: [{ kind: 'gate', name: '"><script>x</script>', x: 0, y: 0 }] });
    expect(svg).not.toContain('<script');
    expectWellFormed(svg);
  });
});

describe('mapPath', () => {
  it('writes relative whole steps and leaves out points that fall together', () => {
    expect(
      mapPath([
        [0.2, 0],
        [10, 5],
        [10.3, 4.9],
        [4, -2],
      ]),
    ).toBe('M0 0l10 5-6-7');
    expect(
      mapPath(
        [
          [0, 0],
          [3, 0],
          [3, 4],
        ],
        true,
      ),
    ).toBe('M0 0l3 0 0 4z');
  });

  it('is a bare start for one point and empty for none', () => {
    expect(mapPath([[1, 2]])).toBe('M1 2');
    expect(mapPath([])).toBe('');
  });
});

describe('clipRing', () => {
  it('keeps what lies inside the window and cuts the rest along its edge', () => {
    const clipped = clipRing(
      [
        [-50, 10],
        [50, 10],
        [50, 50],
        [-50, 50],
      ],
      100,
      100,
      0,
    );
    expect(Math.min(...clipped.map(([x]) => x))).toBe(0);
    expect(Math.max(...clipped.map(([x]) => x))).toBe(50);
  });

  it('gives nothing for a ring that lies outside', () => {
    expect(clipRing(circle(-500, 50, 100), 100, 100, 10)).toEqual([]);
  });

  it('leaves a ring inside as it is', () => {
    const ring = circle(50, 50, 20);
    expect(clipRing(ring, 100, 100, 0)).toEqual(ring);
  });
});

describe('locatorSvg', () => {
  const LOCATOR = {
    label: 'The bank about peg 2 of The Pit, north up',
    water: circle(240, 140, 180),
    islands: [circle(240, 100, 30)],
    zones: [],
    overheadLines: [],
    me: [240, 320],
    facingDegrees: 0,
    sectorDegrees: 90,
    reach: 160,
    neighbours: [
      { peg: '1', at: [160, 300], facingDegrees: 20, closed: false },
      { peg: '3', at: [320, 300], facingDegrees: 340, closed: true },
    ],
  } as const;

  it('draws the committed surroundings of a peg', () => {
    const svg = locatorSvg(LOCATOR);
    expectWellFormed(svg);
    compareDrawing('locator', svg);
  });

  it('draws a sector of a whole turn and a window without water', () => {
    expectWellFormed(locatorSvg({ ...LOCATOR, water: [], islands: [], sectorDegrees: 360 }));
  });

  it('cuts a water that goes on outside the window', () => {
    const svg = locatorSvg({ ...LOCATOR, water: circle(0, 0, 9000, 400) });
    const [, d = ''] = /class="m-water" d="([^"]*)"/.exec(svg) ?? [];
    expect(d.length).toBeLessThan(200);
  });
});

it('outlineSvg draws the bare shape with its islands', () => {
  const svg = outlineSvg({ width: 400, height: 300, rings: [circle(200, 150, 140), circle(200, 150, 30)] });
  expectWellFormed(svg);
  expect(svg.match(/z/g)).toHaveLength(2);
});
