import type { Chance } from '../chance.ts';
import type { DrawnWater } from '../ground/drawn-water.ts';
import type { PegStand } from '../ground/peg-stands.ts';
import { isInside, type SpotRing } from '../ground/ring.ts';
import { bearingTo, distanceBetween, rounded, type Spot, spotAt } from '../ground/spot.ts';
import { drawing, EARTH_WASH, INK, inkLine, LEAF_WASH, type Point, REED_WASH, tufts, WATER_WASH, wash } from './ink.ts';
import { lettering } from './lettering.ts';
import type { PegDrawing } from './section-drawing.ts';

const WIDTH = 960;
const HEIGHT = 640;
const AHEAD_METRES = 46;
const PEG_Y = HEIGHT - 70;
const PER_METRE = (PEG_Y - 40) / AHEAD_METRES;
/** Rings of distance drawn across the water. */
const RINGS_METRES = [11, 16, 30] as const;

/** A sketch of a swim from above, the angler at the foot and the water ahead of them, in ink and wash. */
export function swimSketch(water: DrawnWater, stand: PegStand, chance: Chance): PegDrawing {
  const seen = (spot: Spot): Point => onPaper(stand, spot);
  const inView = (ring: SpotRing) => ring.some((spot) => distanceBetween(spot, stand.at) < AHEAD_METRES * 1.1);
  const ringOf = (ring: SpotRing) => [...ring, ring[0]!].map(seen);
  const areas = water.areas.filter((area) => inView(area.ring));
  const parts = [
    '<clipPath id="sheet"><rect x="24" y="24" width="912" height="592" rx="3"/></clipPath><g clip-path="url(#sheet)">',
    wash(
      [
        { x: 0, y: 0 },
        { x: WIDTH, y: 0 },
        { x: WIDTH, y: HEIGHT },
        { x: 0, y: HEIGHT },
      ],
      EARTH_WASH,
      chance,
    ),
    `<path d="${plainPath(ringOf(water.outline))}" fill="#fbf8f1"/>`,
    wash(ringOf(water.outline), WATER_WASH, chance),
    inkLine(ringOf(water.outline), 2.6, chance),
    ...RINGS_METRES.flatMap((metres) => distanceRing(water, stand, metres, chance)),
    ...water.islands
      .filter((island) => inView(island.ring))
      .flatMap((island) => [
        `<path d="${plainPath(ringOf(island.ring))}" fill="#fbf8f1"/>`,
        wash(ringOf(island.ring), LEAF_WASH, chance),
        inkLine(ringOf(island.ring), 2.4, chance),
        tufts(scattered(island.ring, 26, chance).map(seen), 20, 4, chance),
      ]),
    ...areas.flatMap((area) => {
      if (area.kind === 'reeds') {
        return [
          wash(ringOf(area.ring), REED_WASH, chance),
          tufts(scattered(area.ring, 60, chance).map(seen), 24, 5, chance),
        ];
      }
      if (area.kind === 'lilies') return [pads(scattered(area.ring, 22, chance).map(seen), chance)];
      if (area.kind === 'trees')
        return [wash(ringOf(area.ring), LEAF_WASH, chance), crowns(scattered(area.ring, 12, chance).map(seen), chance)];
      if (area.kind === 'snag') return [inkLine(ringOf(area.ring), 2.4, chance)];
      return [];
    }),
    inkLine(
      [seen(spotAt(stand.at, stand.facingDegrees - 90, 1)), seen(spotAt(stand.at, stand.facingDegrees + 90, 1))],
      7,
      chance,
    ),
    '</g>',
    northArrow(stand, chance),
  ];
  const alt = `Ink sketch from above, ${water.name} peg ${stand.peg} at the foot, looking ${Math.round(stand.facingDegrees)}°: ${whatIsSeen(water, stand)}. Rings at 11, 16 and 30 m.`;
  return { svg: drawing(WIDTH, HEIGHT, alt, parts), alt };
}

/** Turns the plan so that the facing points up the sheet. */
function onPaper(stand: PegStand, spot: Spot): Point {
  const metres = distanceBetween(stand.at, spot);
  const angle = ((bearingTo(stand.at, spot) - stand.facingDegrees) * Math.PI) / 180;
  return { x: WIDTH / 2 + metres * PER_METRE * Math.sin(angle), y: PEG_Y - metres * PER_METRE * Math.cos(angle) };
}

function plainPath(points: readonly Point[]): string {
  return `M${points.map((point) => `${point.x.toFixed(1)},${point.y.toFixed(1)}`).join('L')}Z`;
}

/** A dotted arc over open water, and its distance written where it meets the left of the sector. */
function distanceRing(water: DrawnWater, stand: PegStand, metres: number, chance: Chance): string[] {
  const isWater = (spot: Spot) =>
    isInside(water.outline, spot) && !water.islands.some((island) => isInside(island.ring, spot));
  const spots = Array.from({ length: 46 }, (_, i) => spotAt(stand.at, stand.facingDegrees - 45 + i * 2, metres));
  const dots = spots.filter(isWater).map((spot) => onPaper(stand, spot));
  const straight = spotAt(stand.at, stand.facingDegrees + 8, metres);
  return [
    `<g fill="${INK}" fill-opacity="0.6">${dots.map((dot) => `<circle cx="${dot.x.toFixed(1)}" cy="${dot.y.toFixed(1)}" r="1.7"/>`).join('')}</g>`,
    ...(isWater(straight)
      ? [lettering(`${metres} m`, { ...onPaper(stand, straight), y: onPaper(stand, straight).y - 14 }, 16, chance)]
      : []),
  ];
}

function scattered(ring: SpotRing, count: number, chance: Chance): Spot[] {
  const xs = ring.map((spot) => spot.x);
  const ys = ring.map((spot) => spot.y);
  const spots: Spot[] = [];
  for (let tries = 0; spots.length < count && tries < count * 30; tries++) {
    const spot = {
      x: chance.between(Math.min(...xs), Math.max(...xs)),
      y: chance.between(Math.min(...ys), Math.max(...ys)),
    };
    if (isInside(ring, spot)) spots.push(spot);
  }
  return spots;
}

function pads(at: readonly Point[], chance: Chance): string {
  const leaves = at.map((point) => {
    const size = chance.between(7, 13);
    return `<ellipse cx="${point.x.toFixed(1)}" cy="${point.y.toFixed(1)}" rx="${size.toFixed(1)}" ry="${(size * 0.75).toFixed(1)}"/>`;
  });
  return `<g fill="${LEAF_WASH}" fill-opacity="0.7" stroke="${INK}" stroke-width="1.1" stroke-opacity="0.7">${leaves.join('')}</g>`;
}

function crowns(at: readonly Point[], chance: Chance): string {
  return at
    .map((point) => {
      const size = chance.between(16, 30);
      const rim = Array.from({ length: 9 }, (_, i) => ({
        x: point.x + size * Math.cos((i * Math.PI) / 4) * chance.between(0.85, 1.1),
        y: point.y + size * Math.sin((i * Math.PI) / 4) * chance.between(0.85, 1.1),
      }));
      return inkLine(rim, 1.6, chance);
    })
    .join('');
}

function northArrow(stand: PegStand, chance: Chance): string {
  const middle = { x: WIDTH - 78, y: 84 };
  const angle = (-stand.facingDegrees * Math.PI) / 180;
  const along = (length: number, swing = 0): Point => ({
    x: middle.x + length * Math.sin(angle + swing),
    y: middle.y - length * Math.cos(angle + swing),
  });
  return [
    inkLine([along(-26), middle, along(26)], 2, chance),
    inkLine([along(14, 0.45), along(26), along(14, -0.45)], 2, chance),
    lettering('N', along(40), 16, chance),
  ].join('');
}

function whatIsSeen(water: DrawnWater, stand: PegStand): string {
  const said: string[] = [];
  if (stand.islandMetres !== null && stand.islandMetres < AHEAD_METRES)
    said.push(`an island ${rounded(stand.islandMetres, 0)} m off`);
  if (stand.features.includes('reeds')) said.push('reeds beside the peg');
  if (stand.liliesMetres !== null && stand.liliesMetres < 30)
    said.push(`lilies at ${rounded(stand.liliesMetres, 0)} m`);
  if (stand.features.includes('overhang')) said.push('trees over the bank');
  said.push(
    stand.farBankMetres < AHEAD_METRES
      ? `the far bank ${rounded(stand.farBankMetres, 0)} m straight ahead`
      : 'open water beyond',
  );
  return said.join(', ') || water.name;
}
