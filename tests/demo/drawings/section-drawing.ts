import type { Chance } from '../chance.ts';
import { depthAt } from '../ground/bed.ts';
import type { DrawnWater } from '../ground/drawn-water.ts';
import type { PegStand } from '../ground/peg-stands.ts';
import { rounded, spotAt } from '../ground/spot.ts';
import { drawing, EARTH_WASH, INK, inkLine, LEAF_WASH, type Point, REED_WASH, tufts, WATER_WASH, wash } from './ink.ts';
import { lettering } from './lettering.ts';

/** A drawing of a peg, and what it shows in words. */
export interface PegDrawing {
  readonly svg: string;
  readonly alt: string;
}

const WIDTH = 960;
const HEIGHT = 540;
const SURFACE_Y = 190;
const LAND_METRES = 4;
/** Where depths are written. */
const MARKS_METRES = [2.5, 6, 11, 16] as const;

/** A section through bank and water from a peg out along its facing, as a hand would draw it in ink and wash. */
export function sectionDrawing(water: DrawnWater, stand: PegStand, outMetres: number, chance: Chance): PegDrawing {
  const perMetre = WIDTH / (outMetres + LAND_METRES);
  const depths = Array.from({ length: Math.floor(outMetres * 2) + 1 }, (_, i) => {
    const spot = spotAt(stand.at, stand.facingDegrees, water.setBackMetres + i / 2);
    return { metres: i / 2, depth: depthAt(water, spot) };
  });
  const island = depths.find(({ metres, depth }) => metres > 5 && depth === null);
  const deepest = Math.max(1, ...depths.map(({ depth }) => depth ?? 0));
  const perDepthMetre = (HEIGHT - SURFACE_Y - 60) / deepest;
  const x = (metres: number) => (metres + LAND_METRES) * perMetre;
  const bed: Point[] = depths.map(({ metres, depth }) => ({
    x: x(metres),
    y: depth === null ? SURFACE_Y - 26 : SURFACE_Y + Math.max(depth, metres === 0 ? 0 : 0.1) * perDepthMetre,
  }));
  const bankTop = SURFACE_Y - 78;
  const bank: Point[] = [
    { x: 0, y: bankTop },
    { x: x(-2.6), y: bankTop + 6 },
    { x: x(-1.2), y: SURFACE_Y - 34 },
    { x: x(-0.1), y: SURFACE_Y - 4 },
  ];
  const ground = [...bank, ...bed];
  const surface = [
    { x: x(0), y: SURFACE_Y },
    { x: island === undefined ? WIDTH : x(island.metres - 0.4), y: SURFACE_Y },
  ];
  const marks = MARKS_METRES.map((metres) => depths.find((row) => row.metres === metres)).filter(
    (row): row is { metres: number; depth: number } => row !== undefined && row.depth !== null,
  );
  const parts = [
    wash([...surface, ...bed.filter((point) => point.y > SURFACE_Y).reverse()], WATER_WASH, chance),
    wash([...ground, { x: WIDTH, y: HEIGHT }, { x: 0, y: HEIGHT }], EARTH_WASH, chance),
    inkLine(ground, 3, chance),
    inkLine(surface, 1.6, chance),
    ...hatching(bed, chance),
    tufts(alongBank(bank, chance), 20, 5, chance),
    ...seat(x, stand, chance),
    ...plants(stand, x, bed, chance),
    ...marks.flatMap(({ metres, depth }) => {
      const foot = SURFACE_Y + depth * perDepthMetre;
      return [
        `<path d="M${x(metres).toFixed(1)},${SURFACE_Y}V${foot.toFixed(1)}" stroke="${INK}" stroke-width="1.2" stroke-dasharray="5 6" fill="none"/>`,
        lettering(`${depth.toFixed(1)} m`, { x: x(metres), y: foot + 26 }, 21, chance),
        lettering(`${metres} m`, { x: x(metres), y: SURFACE_Y - 22 }, 17, chance),
      ];
    }),
  ];
  const said = marks.map(({ metres, depth }) => `${depth.toFixed(1)} m at ${metres} m`);
  const list = said.length > 1 ? `${said.slice(0, -1).join(', ')} and ${said[said.length - 1]}` : said.join('');
  const alt = `Ink drawing, a section out from ${water.name} peg ${stand.peg}: ${list} out, at datum${
    island === undefined ? '' : `; land again at about ${rounded(island.metres, 0)} m`
  }. Depth is stretched.`;
  return { svg: drawing(WIDTH, HEIGHT, alt, parts), alt };
}

/** A box, a pole and its float, as small as they are against the water. */
function seat(x: (metres: number) => number, stand: PegStand, chance: Chance): string[] {
  const boardY = SURFACE_Y - 30;
  const poleTip = { x: x(11), y: SURFACE_Y - 58 };
  const board = [
    { x: x(-1.7), y: boardY },
    { x: x(-0.5), y: boardY },
    { x: x(0.5), y: boardY },
  ];
  const post = [
    { x: x(0.35), y: boardY },
    { x: x(0.35), y: SURFACE_Y + 18 },
  ];
  const box = [
    { x: x(-1.3), y: boardY },
    { x: x(-1.3), y: boardY - 26 },
    { x: x(-0.7), y: boardY - 26 },
    { x: x(-0.7), y: boardY },
  ];
  const pole = [{ x: x(-0.9), y: boardY - 40 }, { x: x(4), y: boardY - 38 }, poleTip];
  const isClosed = !stand.clearance.open;
  return [
    inkLine(board, 4, chance),
    inkLine(post, 3, chance),
    ...(isClosed ? [] : [inkLine(box, 2.2, chance), inkLine(pole, 1.8, chance)]),
  ];
}

function alongBank(bank: readonly Point[], chance: Chance): Point[] {
  return Array.from({ length: 26 }, () => {
    const share = chance.uniform();
    const from = bank[share < 0.5 ? 0 : 1]!;
    const to = bank[share < 0.5 ? 1 : 2]!;
    const along = (share * 2) % 1;
    return { x: from.x + along * (to.x - from.x), y: from.y + along * (to.y - from.y) };
  });
}

/** Short slanted strokes below the bed, as an engraver would shade it. */
function hatching(bed: readonly Point[], chance: Chance): string[] {
  const strokes = bed
    .filter((_, i) => i % 2 === 0)
    .map((point) => {
      const length = chance.between(12, 34);
      return `M${(point.x - 2).toFixed(1)},${(point.y + 5).toFixed(1)}l${(-length * 0.55).toFixed(1)},${length.toFixed(1)}`;
    });
  return [`<path d="${strokes.join('')}" stroke="${INK}" stroke-width="1" stroke-opacity="0.45" fill="none"/>`];
}

function plants(stand: PegStand, x: (metres: number) => number, bed: readonly Point[], chance: Chance): string[] {
  const parts: string[] = [];
  if (stand.features.includes('reeds')) {
    const feet = Array.from({ length: 34 }, () => ({
      x: x(chance.between(0.6, 2.6)),
      y: SURFACE_Y + chance.between(4, 34),
    }));
    parts.push(tufts(feet, 92, 8, chance));
    parts.push(
      `<g fill="${REED_WASH}">${feet
        .slice(0, 7)
        .map(
          (foot) =>
            `<ellipse cx="${foot.x.toFixed(1)}" cy="${(foot.y - 84).toFixed(1)}" rx="3.4" ry="11" fill-opacity="0.8"/>`,
        )
        .join('')}</g>`,
    );
  }
  if (stand.features.includes('lilies') && stand.liliesMetres !== null) {
    const from = Math.max(1, stand.liliesMetres - 1.2);
    const pads = Array.from({ length: 8 }, () => ({ x: x(chance.between(from, from + 4)), y: SURFACE_Y }));
    parts.push(
      `<g fill="${LEAF_WASH}">${pads.map((pad) => `<ellipse cx="${pad.x.toFixed(1)}" cy="${pad.y}" rx="${chance.between(12, 22).toFixed(1)}" ry="3.6" fill-opacity="0.75"/>`).join('')}</g>`,
      ...pads.slice(0, 5).map((pad) => {
        const foot = bed.reduce((best, point) => (Math.abs(point.x - pad.x) < Math.abs(best.x - pad.x) ? point : best));
        return inkLine([pad, { x: pad.x + 9, y: (pad.y + foot.y) / 2 }, { x: pad.x - 4, y: foot.y }], 1, chance);
      }),
    );
  }
  return parts;
}
