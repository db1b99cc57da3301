import { countWords } from '../../../domain/count-words.ts';
import type { LatLng } from '../../../domain/place.ts';
import { distanceMetres } from '../../../ground/geodesy/geodesic-between.ts';
import { shorePlaces } from '../../../ground/shore-place.ts';
import { editFrontMatter } from '../../edit-front-matter.ts';
import type { StagedFiles } from '../../intake/staged-files.ts';
import { MapSheet } from './map-sheet.ts';
import type { PlacesWater, SettledPeg, SettledPlaces } from './settle-places.ts';

/** One line of what an import of places would do. */
export interface PlaceChange {
  readonly what: string;
  readonly words: string;
}

/** Below this a place has not moved: a phone writes no two positions alike. */
const STILL_METRES = 0.5;
const IS_PLACEHOLDER = /^position:.*\bplaceholder: *true/m;

/**
 * Puts places into the folder: outlines and things onto the maps, a record for each new peg, a position into each known one.
 * Nothing that stands on a map is taken away, and an overhead line is never moved: a second drawing of one stands beside the first.
 * @param position where a known peg's record says it is
 */
export function planPlaces(
  settled: SettledPlaces,
  position: (water: string, peg: string) => LatLng | undefined,
  files: StagedFiles,
): readonly PlaceChange[] {
  return settled.waters.flatMap((water) => {
    const things = settled.things.filter((thing) => thing.water === water.id);
    const pegs = settled.pegs.filter((peg) => peg.water === water.id);
    return [
      ...(water.isNew ? newWater(water, files) : []),
      ...mapChanges(water, things, files),
      ...pegs.flatMap((peg) => pegChange(peg, water, position(water.id, peg.peg), files)),
      ...(things.some(({ kind }) => kind === 'outline') ? placeholdersAlong(water, files) : []),
    ];
  });
}

function newWater({ id, name }: PlacesWater, files: StagedFiles): readonly PlaceChange[] {
  const path = `waters/${id}.md`;
  if (files.text(path) !== null) return [];
  files.put(
    path,
    `---\nname: ${JSON.stringify(name)}\nkind: stillwater # in the trade's words: snaky pit, clay pit, match lake\ndatum: "not fixed yet" # what level zero is: top of the monk sill\nclose-season: unknown # none, statutory, club or unknown\n---\n`,
  );
  return [{ what: path, words: 'a new water' }];
}

function mapChanges(water: PlacesWater, things: SettledPlaces['things'], files: StagedFiles): readonly PlaceChange[] {
  if (things.length === 0) return [];
  const path = `waters/${water.id}.geojson`;
  const map = new MapSheet(files.text(path));
  const changes = things.flatMap(({ thing, kind }) => {
    const words = map.draw(kind, thing);
    return words === null ? [] : [{ what: path, words }];
  });
  if (changes.length > 0) files.put(path, map.text());
  return changes;
}

function pegChange(
  { water, peg, at }: SettledPeg,
  { shore }: PlacesWater,
  before: LatLng | undefined,
  files: StagedFiles,
): readonly PlaceChange[] {
  const path = `pegs/${water}/${peg}.md`;
  const text = files.text(path);
  const place = shore === null ? null : shorePlaces(shore)(at);
  const beside = place === null ? '' : `, ${besideWater(place.metresFromWater)}`;
  if (text === null) {
    files.put(
      path,
      `---\npeg: "${peg}"\nwater: ${water}\nposition: { lat: ${degrees(at.lat)}, lng: ${degrees(at.lng)} }\nstatus: open\n---\n`,
    );
    const faces = place === null ? '' : `, facing ${place.facingDegrees}° by the shore as drawn`;
    return [{ what: path, words: `a new peg${faces}${beside}` }];
  }
  const isPlaceholder = IS_PLACEHOLDER.test(text);
  if (!isPlaceholder && before !== undefined && distanceMetres(before, at) < STILL_METRES) return [];
  const moved =
    before === undefined || isPlaceholder ? 'a position' : `moved ${distanceMetres(before, at).toFixed(1)} m`;
  files.put(
    path,
    editFrontMatter(text, [
      ...(/^position:.*\bgrid\b/m.test(text) ? [{ kind: 'remove' as const, path: ['position'] }] : []),
      { kind: 'set', path: ['position', 'lat'], value: degrees(at.lat) },
      { kind: 'set', path: ['position', 'lng'], value: degrees(at.lng) },
      // What a placeholder faces was made up with it.
      ...(isPlaceholder
        ? [{ kind: 'remove' as const, path: ['position', 'placeholder'] }, ...withoutFacing(text)]
        : []),
    ]),
  );
  return [{ what: path, words: `${moved}${beside}` }];
}

/** Pegs that stand in for themselves go along to a shore that was drawn, spread evenly around it, and still stand in. */
function placeholdersAlong({ id, shore }: PlacesWater, files: StagedFiles): readonly PlaceChange[] {
  if (shore === null) return [];
  const standIns = files.pegsOf(id).flatMap((peg) => {
    const path = `pegs/${id}/${peg}.md`;
    const text = files.text(path);
    return text !== null && IS_PLACEHOLDER.test(text) ? [{ path, text }] : [];
  });
  standIns.sort((a, b) => a.path.localeCompare(b.path, 'en', { numeric: true }));
  standIns.forEach(({ path, text }, index) => {
    const at = alongRing(shore.outline, (index + 0.5) / standIns.length);
    files.put(
      path,
      editFrontMatter(text, [
        { kind: 'set', path: ['position', 'lat'], value: degrees(at.lat) },
        { kind: 'set', path: ['position', 'lng'], value: degrees(at.lng) },
        ...withoutFacing(text),
      ]),
    );
  });
  const words = `${countWords(standIns.length, 'peg')} without a place of their own, spread along the shore as drawn`;
  return standIns.length === 0 ? [] : [{ what: `pegs/${id}`, words }];
}

/** Takes a facing out of a record; what it faces is then worked out from the shore, and marked so. */
function withoutFacing(text: string) {
  return /^facing:/m.test(text) ? [{ kind: 'remove' as const, path: ['facing'] }] : [];
}

/** The place a share of the way around a ring. */
function alongRing(ring: readonly LatLng[], share: number): LatLng {
  const lengths = ring.map((corner, index) => distanceMetres(corner, ring[(index + 1) % ring.length]!));
  let left = share * lengths.reduce((sum, length) => sum + length, 0);
  let side = 0;
  while (side < ring.length - 1 && left > lengths[side]!) left -= lengths[side++]!;
  const [from, to] = [ring[side]!, ring[(side + 1) % ring.length]!];
  const part = lengths[side] === 0 ? 0 : left / lengths[side]!;
  return { lat: from.lat + (to.lat - from.lat) * part, lng: from.lng + (to.lng - from.lng) * part };
}

function besideWater(metres: number): string {
  return metres < 0
    ? `${(-metres).toFixed(1)} m out over the water as drawn`
    : `${metres.toFixed(1)} m from the water's edge`;
}

/** Seven decimals are a centimetre. */
function degrees(value: number): number {
  return Number(value.toFixed(7));
}
