import type { WaterMap } from '../../../domain/map.ts';
import type { LatLng } from '../../../domain/place.ts';
import { distanceMetres } from '../../../ground/geodesy/geodesic-between.ts';
import { shorePlaces } from '../../../ground/shore-place.ts';
import type { Asker, Question } from '../questions.ts';
import type { Unread } from '../results/result-row.ts';
import { waterInTitle } from '../results/title-facts.ts';
import { anchorOf, type DrawnThing } from './drawn-thing.ts';
import { kindInWords, kindsFor, pegInName, type ThingKind } from './thing-kinds.ts';

/** A water as an import of places sees it: one of the folder, or one whose outline this drawing brings. */
export interface PlacesWater {
  readonly id: string;
  readonly name: string;
  /** Null where nothing has been drawn yet. */
  readonly shore: Pick<WaterMap, 'outline' | 'islands'> | null;
  readonly isNew: boolean;
}

export interface SettledThing {
  readonly thing: DrawnThing;
  readonly kind: ThingKind;
  readonly water: string;
}

export interface SettledPeg {
  readonly water: string;
  readonly peg: string;
  readonly at: LatLng;
  readonly place: string;
}

export interface SettledPlaces {
  readonly waters: readonly PlacesWater[];
  readonly things: readonly SettledThing[];
  readonly pegs: readonly SettledPeg[];
  readonly unread: readonly Unread[];
}

/** Two waters nearer than this to a place are both possible: a phone is out by as much. */
const SURE_METRES = 10;

/** Says of every thing of a drawing what it is and on which water; what its own words do not tell is asked. */
export function settlePlaces(
  things: readonly DrawnThing[],
  known: readonly PlacesWater[],
  asker: Asker,
): SettledPlaces {
  const unread: Unread[] = [];
  const names = known.map(({ name }) => name);
  const kinds = things.flatMap((drawn) => {
    const thing = closedAsArea(drawn);
    const kind = kindInWords(thing, names) ?? asker.ask(kindQuestion(thing));
    if (kind === 'leave')
      unread.push({ place: thing.place, what: `a ${thing.shape.type}`, why: 'left, as was answered' });
    return kind === null || kind === 'leave' ? [] : [{ thing, kind }];
  });
  const outlines = kinds.filter(({ kind }) => kind === 'outline');
  const drawn = outlines.flatMap(({ thing }) => outlineWater(thing, known, asker));
  const waters = [
    ...known.map((water) => drawn.find(({ id }) => id === water.id) ?? water),
    ...drawn.filter(({ id }) => known.every((water) => water.id !== id)),
  ];
  const near = waters.flatMap((water) => (water.shore === null ? [] : [{ water, place: shorePlaces(water.shore) }]));
  const settled = kinds.flatMap(({ thing, kind }): readonly SettledThing[] => {
    if (kind === 'outline') {
      const water = drawn.find(({ shore }) => shore?.outline === ringOf(thing));
      return water === undefined ? [] : [{ thing, kind, water: water.id }];
    }
    const water = waterOf(thing, waters, near, asker);
    return water === null ? [] : [{ thing, kind, water }];
  });
  const pegs = pegsOf(settled, asker);
  return { waters, things: settled.filter(({ kind }) => kind !== 'peg'), pegs, unread };
}

/** A line that comes back to where it began is the edge of something, unless its words make it a wire or a way. */
function closedAsArea(thing: DrawnThing): DrawnThing {
  if (thing.shape.type !== 'line' || thing.shape.line.length < 4 || kindInWords(thing, []) !== null) return thing;
  const { line } = thing.shape;
  const [first, last] = [line[0]!, line.at(-1)!];
  if (first.lat !== last.lat || first.lng !== last.lng) return thing;
  return { ...thing, shape: { type: 'area', ring: line.slice(0, -1), holes: [] } };
}

function ringOf({ shape }: DrawnThing): readonly LatLng[] | null {
  return shape.type === 'area' ? shape.ring : null;
}

function kindQuestion(thing: DrawnThing): Question {
  const { shape, name } = thing;
  const size =
    shape.type === 'line'
      ? `a line of ${shape.line.length} points, ${Math.round(lengthMetres(shape.line))} m long`
      : shape.type === 'area'
        ? `an area of ${shape.ring.length} corners, ${Math.round(lengthMetres([...shape.ring, shape.ring[0]!]))} m around`
        : `a point at ${shape.at.lat.toFixed(5)}, ${shape.at.lng.toFixed(5)}`;
  return {
    scope: 'papers',
    of: thing.file,
    key: `what is ${name === '' ? thing.place.replace(/^.*, /, '') : name}`,
    ask: `What is ${name === '' ? 'the thing without a name' : `"${name}"`}?`,
    evidence: [
      size,
      ...(thing.note === '' ? [] : [`beside it stands: ${thing.note.slice(0, 80)}`]),
      ...(thing.isTrack ? ['walked with a phone'] : []),
    ],
    choices: [
      ...kindsFor(shape.type).map((kind) => ({
        value: kind,
        words: kind === 'overhead-line' ? 'an overhead electric line' : kind.replaceAll('-', ' '),
      })),
      { value: 'leave', words: 'nothing for the map: leave it' },
    ],
    ...(thing.isTrack ? { suggested: 'leave' } : {}),
  };
}

function lengthMetres(line: readonly LatLng[]): number {
  let metres = 0;
  for (let index = 1; index < line.length; index++) metres += distanceMetres(line[index - 1]!, line[index]!);
  return metres;
}

/** The water an outline belongs to: the one it is named for, the one it lies on, or a new one. */
function outlineWater(thing: DrawnThing, known: readonly PlacesWater[], asker: Asker): readonly PlacesWater[] {
  if (thing.shape.type !== 'area') return [];
  const shore = {
    outline: thing.shape.ring,
    islands: thing.shape.holes.map((ring, index) => ({ id: `island-${index + 1}`, ring })),
  };
  const named = waterInTitle(thing.waterText ?? thing.name, known);
  const lies = known.filter(
    (water) => water.shore !== null && shorePlaces(water.shore)(anchorOf(thing)).metresFromWater < 30,
  );
  const id =
    named ??
    (lies.length === 1 ? lies[0]!.id : null) ??
    asker.ask({
      scope: 'papers',
      of: thing.file,
      key: `water of ${thing.name || thing.place.replace(/^.*, /, '')}`,
      ask: `Which water is the outline ${thing.name === '' ? 'without a name' : `"${thing.name}"`}?`,
      evidence: [`${Math.round(lengthMetres([...shore.outline, shore.outline[0]!]))} m around`],
      choices: [
        ...known.map((water) => ({ value: water.id, words: water.name })),
        { value: 'new', words: 'a new water of that name' },
      ],
      ...(known.length === 0 || thing.name !== '' ? { suggested: 'new' } : {}),
    });
  if (id === null) return [];
  const water = known.find((one) => one.id === id);
  if (water !== undefined) return [{ ...water, shore }];
  const slug = waterSlug(thing.name);
  return [{ id: slug, name: thing.name || 'New water', shore, isNew: true }];
}

/** The file name of a water: small letters, digits and hyphens. */
export function waterSlug(name: string): string {
  const slug = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return slug === '' ? 'new-water' : slug;
}

function waterOf(
  thing: DrawnThing,
  waters: readonly PlacesWater[],
  near: readonly { readonly water: PlacesWater; readonly place: ReturnType<typeof shorePlaces> }[],
  asker: Asker,
): string | null {
  const named = thing.waterText === null ? waterInTitle(thing.name, waters) : waterInTitle(thing.waterText, waters);
  if (named !== null) return named;
  const at = anchorOf(thing);
  const sorted = near
    .map(({ water, place }) => ({ water, metres: Math.max(0, place(at).metresFromWater) }))
    .sort((a, b) => a.metres - b.metres);
  const [first, second] = sorted;
  if (first !== undefined && (second === undefined || second.metres - first.metres > SURE_METRES))
    return first.water.id;
  return asker.ask({
    scope: 'papers',
    of: thing.file,
    key: `water of ${thing.name || thing.place.replace(/^.*, /, '')}`,
    ask: `On which water is ${thing.name === '' ? thing.place : `"${thing.name}"`}?`,
    evidence: sorted.map(({ water, metres }) => `${Math.round(metres)} m from ${water.name}`),
    choices: waters.map(({ id, name }) => ({ value: id, words: name })),
    ...(first === undefined ? {} : { suggested: first.water.id }),
  });
}

/** Points for one peg become one: the club says which, where they differ. */
function pegsOf(settled: readonly SettledThing[], asker: Asker): readonly SettledPeg[] {
  const byPeg = new Map<string, { water: string; peg: string; points: { at: LatLng; place: string }[] }>();
  for (const { thing, kind, water } of settled) {
    if (kind !== 'peg' || thing.shape.type !== 'point') continue;
    const peg = pegInName(thing.name) ?? askPegName(thing, asker);
    if (peg === null) continue;
    const key = `${water}/${peg}`;
    const entry = byPeg.get(key) ?? { water, peg, points: [] };
    entry.points.push({ at: thing.shape.at, place: thing.place });
    byPeg.set(key, entry);
  }
  return [...byPeg.values()].flatMap(({ water, peg, points }) => {
    const [first] = points;
    const spread = Math.max(...points.map(({ at }) => distanceMetres(first!.at, at)));
    if (points.length === 1 || spread < 0.5) return [{ water, peg, at: first!.at, place: first!.place }];
    const choice = asker.ask({
      scope: 'papers',
      of: first!.place.replace(/, .*$/, ''),
      key: `points of ${water}/${peg}`,
      ask: `Peg ${peg} has ${points.length} points. Where is it?`,
      evidence: [`they lie up to ${spread.toFixed(1)} m apart`],
      choices: [
        { value: 'mean', words: 'in the middle of them' },
        { value: 'first', words: 'at the first' },
        { value: 'last', words: 'at the last' },
      ],
    });
    if (choice === null) return [];
    const at =
      choice === 'mean' ? middleOf(points.map((point) => point.at)) : points.at(choice === 'first' ? 0 : -1)!.at;
    return [{ water, peg, at, place: first!.place }];
  });
}

function askPegName(thing: DrawnThing, asker: Asker): string | null {
  return asker.ask({
    scope: 'papers',
    of: thing.file,
    key: `peg of ${thing.name}`,
    ask: `Which peg is "${thing.name}"?`,
    evidence: ['its name holds no number that is sure'],
    choices: null,
    check: (answer) => (/^[0-9]{1,4}[a-z]?$/.test(answer) ? null : 'Expected a peg such as 23 or 14a.'),
  });
}

function middleOf(points: readonly LatLng[]): LatLng {
  const mean = (of: (point: LatLng) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  return { lat: mean(({ lat }) => lat), lng: mean(({ lng }) => lng) };
}
