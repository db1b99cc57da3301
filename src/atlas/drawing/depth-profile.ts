import { type BrokenScale, brokenScale } from './broken-scale.ts';
import { hatch } from './hatch.ts';
import { simplifyLine } from './simplify-line.ts';
import { pathThrough, short, stroke, svgElement, svgPath, svgText } from './svg-markup.ts';

/** The bed at one distance out from the peg: depth positive downward, null where nobody has plumbed, 0 on land. */
export interface BedPoint {
  readonly distanceMetres: number;
  readonly depthMetres: number | null;
  readonly land: boolean;
}

/** A line of the trade, as it is written: `11` above the water, `2.05` below the lead. Null depth: no plumb line there. */
export interface PlumbLine {
  readonly distanceMetres: number;
  readonly depthMetres: number | null;
  readonly distanceWords: string;
  readonly depthWords: string;
}

export interface DepthSection {
  /** How the water stands today, above the datum; null where nobody has read the gauge. */
  readonly levelMetres: number | null;
  readonly bed: readonly BedPoint[];
  readonly lines: readonly PlumbLine[];
  /** Level strokes with their words at the right: `1 m`. */
  readonly depthMarks: readonly { readonly depthMetres: number; readonly words: string }[];
  /** How far a pole may go out from here; 0 where none may, as at a closed peg: then no ruler is drawn. */
  readonly poleMetres: number;
  /** Where the joints of a pole lie from its tip: its top kit's end, then that of each section. */
  readonly poleJointsMetres: readonly number[];
  /** Words over land within the section: `island`, `far bank`. */
  readonly landWords: readonly { readonly distanceMetres: number; readonly words: string }[];
}

const WIDTH = 360;
const EDGE = 34;
const RIGHT = WIDTH - 4;
const POLE_TOP = 18;
const POLE_BOTTOM = 29;
const SURFACE = 46;
const DEEPEST = 138;
const GROUND = 162;
const HEIGHT = 164;
/** Half the width of a bold figure, about, in user units. */
const HALF_CHARACTER = 3.3;

/**
 * A section through bank and water along the peg's facing: the bed as plumbed, a plumb line at each of the trade's lines
 * with its depth beside the lead, land (an island, the far bank) where the section meets it, and slanting strokes with
 * the words "not plumbed" where nothing is known. Beyond the pole's reach the level scale is tighter; the break is marked.
 */
export function depthProfile(section: DepthSection, label: string): string {
  const end = Math.max(...section.bed.map((point) => point.distanceMetres), 1);
  const across = brokenScale(end, 17, 0.28, EDGE, RIGHT);
  const deepest = Math.max(...section.bed.map((point) => point.depthMetres ?? 0), 0.5);
  const down = (depthMetres: number) => SURFACE + ((DEEPEST - SURFACE) * depthMetres) / deepest;
  const stretches = splitStretches(section.bed);
  const ground = stretches.filter(({ kind }) => kind !== 'unplumbed');
  const body = [
    svgPath(ground.map((stretch) => waterOver(stretch, across)).join(''), 'water'),
    svgPath(earth(section.bed, stretches, across, down), 'earth'),
    ...stretches.filter(({ kind }) => kind === 'unplumbed').map((stretch) => unplumbed(stretch, across)),
    svgPath(stroke(EDGE, SURFACE, RIGHT, SURFACE), 'surface'),
    section.levelMetres === null ? '' : surfaceToday(section.levelMetres, down),
    ...section.depthMarks.filter(({ depthMetres }) => depthMetres < deepest).map((mark) => depthMark(mark, down)),
    across.breakAt === null ? '' : breakMark(across.breakAt),
    plumbLines(section.lines, end, across, down),
    poleRuler(Math.min(section.poleMetres, firstLand(section.bed), end), section.poleJointsMetres, across),
    ...section.landWords.map(({ distanceMetres, words }) => landWord(distanceMetres, words, across)),
    svgPath(`M${EDGE - 1},${SURFACE - 7}h-22v7m16,-7v10`, 'platform'),
  ];
  return svgElement({ width: WIDTH, height: HEIGHT, label, kind: 'depth-profile' }, body.join(''));
}

/** Today's surface as a line of its own; its figures let a script move it to another reading. */
function surfaceToday(levelMetres: number, down: (depth: number) => number): string {
  const unitsPerMetre = short(down(1) - down(0));
  return `<path class="today" data-surface="${levelMetres} ${unitsPerMetre}" d="${stroke(EDGE, down(-levelMetres), RIGHT, down(-levelMetres))}"/>`;
}

type Kind = 'water' | 'land' | 'unplumbed';

interface Stretch {
  readonly kind: Kind;
  readonly points: readonly BedPoint[];
}

/** Cuts the bed into stretches of one kind; the end of one is the start of the next, so no gap shows. */
function splitStretches(bed: readonly BedPoint[]): readonly Stretch[] {
  const kindOf = (point: BedPoint): Kind => (point.land ? 'land' : point.depthMetres === null ? 'unplumbed' : 'water');
  const stretches: { kind: Kind; points: BedPoint[] }[] = [];
  for (const point of bed) {
    const last = stretches.at(-1);
    const kind = kindOf(point);
    if (last !== undefined && last.kind === kind) {
      last.points.push(point);
      continue;
    }
    const before = last?.points.at(-1);
    // The unplumbed stretch takes in both its neighbours' ends; otherwise the earlier stretch reaches to the new point.
    if (last !== undefined && last.kind === 'unplumbed') last.points.push(point);
    const joins = before !== undefined && last?.kind !== 'unplumbed';
    stretches.push({ kind, points: joins ? [before, point] : [point] });
  }
  return stretches;
}

/** Water stands over the whole stretch; the earth is drawn on it, so that a bank's slope needs no seam. */
function waterOver({ points }: Stretch, across: BrokenScale): string {
  const [from, to] = [points[0]!, points.at(-1)!].map((point) => short(across.place(point.distanceMetres)));
  return `M${from},${SURFACE}V${GROUND}H${to}V${SURFACE}z`;
}

/**
 * The bank under the angler and the bed as far as it is plumbed without a gap, as one outline each: its edge along the bed is
 * stroked, and everything else of it but the end of what is known lies outside the drawing.
 */
function earth(
  bed: readonly BedPoint[],
  stretches: readonly Stretch[],
  across: BrokenScale,
  down: (depth: number) => number,
): string {
  const margin = bed[0]?.depthMetres ?? 0;
  let outline: (readonly [number, number])[] = [
    [-4, SURFACE - 14],
    [12, SURFACE - 14],
    [EDGE - 2, SURFACE + 2],
    [EDGE, Math.max(down(margin), SURFACE)],
  ];
  const outlines = [outline];
  for (const { kind, points } of stretches) {
    if (kind === 'unplumbed') {
      outline = [];
      outlines.push(outline);
      continue;
    }
    const top = (point: BedPoint) => (kind === 'land' && point.land ? SURFACE - 6 : down(point.depthMetres ?? 0));
    const along = points.map((point) => [across.place(point.distanceMetres), top(point)] as const);
    outline.push(...simplifyLine(along, 0.4));
  }
  return outlines
    .filter(({ length }) => length > 1)
    .map((each) => pathThrough([[each[0]![0], HEIGHT + 4], ...each, [each.at(-1)![0], HEIGHT + 4]], true))
    .join('');
}

function unplumbed({ points }: Stretch, across: BrokenScale): string {
  const from = across.place(points[0]!.distanceMetres);
  const to = across.place(points.at(-1)!.distanceMetres);
  const box = { x: from, y: SURFACE, width: to - from, height: GROUND - SURFACE };
  const lines = box.width > 66 ? ['not plumbed'] : box.width > 44 ? ['not', 'plumbed'] : [];
  const words = lines.map((line, index) => svgText((from + to) / 2, 92 + index * 13, line, 'middle', 'said'));
  return svgPath(hatch(box, 8), 'unknown') + words.join('');
}

function depthMark(mark: DepthSection['depthMarks'][number], down: (depth: number) => number): string {
  const y = Math.round(down(mark.depthMetres));
  return svgPath(stroke(EDGE, y, RIGHT, y), 'rule') + svgText(EDGE - 4, y + 4, mark.words, 'end');
}

function breakMark(x: number): string {
  return (
    svgPath(`M${short(x - 3)},${SURFACE + 5}l3,-10m2,10l3,-10`, 'break') +
    svgPath(stroke(x, SURFACE + 5, x, GROUND), 'fold')
  );
}

/** All plumb lines as one path and all leads as another, dots of no length with round ends: a seventh of the bytes. */
function plumbLines(
  lines: readonly PlumbLine[],
  end: number,
  across: BrokenScale,
  down: (depth: number) => number,
): string {
  let lastWords = { right: Number.NEGATIVE_INFINITY, y: 0 };
  let [plumbs, leads] = ['', ''];
  const words: string[] = [];
  for (const line of lines.filter(({ distanceMetres }) => distanceMetres <= end)) {
    const x = Math.round(across.place(line.distanceMetres));
    words.push(svgText(inside(x, line.distanceWords), 14, line.distanceWords));
    const y = line.depthMetres === null ? SURFACE : Math.round(down(line.depthMetres));
    plumbs += stroke(x, POLE_TOP, x, y);
    if (line.depthMetres === null) continue;
    leads += `M${x},${y}h0`;
    const half = line.depthWords.length * HALF_CHARACTER;
    const isFree = x - half > lastWords.right;
    // Words that would run into the ones before go below them.
    const wordsY = isFree ? y + 14 : Math.max(y + 14, lastWords.y + 11);
    // No room left below: the table beside the drawing has the figure.
    if (wordsY > GROUND - 1) continue;
    lastWords = { right: x + half, y: wordsY };
    words.push(svgText(inside(x, line.depthWords), wordsY, line.depthWords, 'middle', 'figure'));
  }
  return svgPath(plumbs, 'plumb') + svgPath(leads, 'lead') + words.join('');
}

/** The middle of words that shall stand at `x` without running over the right edge. */
function inside(x: number, words: string): number {
  return Math.round(Math.min(x, WIDTH - words.length * HALF_CHARACTER));
}

/** A pole laid out over the water: top kit, then its sections by their number, as far as it may go. */
function poleRuler(endMetres: number, jointsMetres: readonly number[], across: BrokenScale): string {
  if (endMetres <= 0) return '';
  const at = (metres: number) => Math.round(across.place(metres));
  const joints = jointsMetres.filter((metres) => metres < endMetres).map(at);
  const ends = [...joints, at(endMetres)];
  // What is numbered: each section behind the top kit that finds room for its figure.
  const sections = ends.slice(1).map((end, i) => ({ name: String(i + 1), from: ends[i]!, end }));
  const named = sections.filter(({ name, from, end }) => end - from >= name.length * 7);
  const middles = named.map(({ from, end }) => short((from + end) / 2)).join(' ');
  const base = POLE_BOTTOM - 2;
  return [
    svgPath(
      `M${EDGE},${POLE_TOP}H${ends.at(-1)}V${POLE_BOTTOM}H${EDGE}z${joints.map((x) => `M${x},${POLE_TOP}V${POLE_BOTTOM}`).join('')}`,
      'pole',
    ),
    ends[0]! - EDGE < 16 ? '' : `<text class="joint" x="${short((EDGE + ends[0]!) / 2)}" y="${base}">kit</text>`,
    named.length === 0
      ? ''
      : `<text class="joint" x="${middles}" y="${base}">${named.map(({ name }) => name).join('')}</text>`,
  ].join('');
}

function firstLand(bed: readonly BedPoint[]): number {
  const water = bed.findIndex(({ land }) => !land);
  return bed.slice(Math.max(0, water)).find(({ land }) => land)?.distanceMetres ?? Number.POSITIVE_INFINITY;
}

function landWord(distanceMetres: number, words: string, across: BrokenScale): string {
  const x = across.place(distanceMetres);
  return svgText(Math.min(x, RIGHT), SURFACE - 10, words, x > WIDTH - 50 ? 'end' : 'middle', 'said');
}
