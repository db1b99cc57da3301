import { ROUND_FORMAT, ROUND_VERSION, type RoundFile, RoundFileSchema } from '../../content/round-file/round-file.ts';
import { PLACE_MARK, type WholeRound } from './draft.ts';
import { gaugeDraftOf, pegDraftOf, placeDraftOf } from './draft-of.ts';
import { gaugeFindingOf, type Problem, pegFindingOf, placeFindingOf } from './finding-of.ts';

/** The file of a round, or what has to be mended before there is one. */
export type MadeFile = { readonly file: RoundFile } | { readonly problems: readonly Problem[] };

/** Turns a round into the file that is handed over. Pegs that were not visited are not in it. */
export function roundFileOf({ round, pegs, gauges, photos }: WholeRound, unit: 'm' | 'ft'): MadeFile {
  const seen = pegs.filter((draft) => draft.seen);
  const [atPlaces, visited] = [seen.filter(isAtPlace), seen.filter((draft) => !isAtPlace(draft))];
  const findings = visited.map((draft) => pegFindingOf(draft, unit));
  const places = atPlaces.map(placeFindingOf);
  const readings = gauges.map((draft) => gaugeFindingOf(draft, unit)).filter((reading) => reading !== null);
  const problems = [...findings, ...places, ...readings].flatMap((one) => one.problems);
  if (problems.length > 0) return { problems };
  const notices = places.flatMap(({ finding }) => (finding.notice === null ? [] : [finding.notice]));
  const file: RoundFile = {
    format: ROUND_FORMAT,
    version: ROUND_VERSION,
    venue: round.venue,
    guideDay: round.guideDay,
    ref: round.ref,
    day: round.day,
    ...(round.by === undefined || round.by.trim() === '' ? {} : { by: round.by.trim() }),
    pegs: findings.map(({ finding }) => finding),
    ...(places.length === 0 ? {} : { places: places.map(({ finding }) => finding.place) }),
    ...(notices.length === 0 ? {} : { notices }),
    gauges: readings.map(({ finding }) => finding),
    photos: photos
      .filter((photo) => seen.some(({ water, peg }) => photo.water === water && photo.peg === peg))
      .map(({ id, water, peg, shows, jpeg }) => ({
        id,
        water,
        ...whereOf(peg),
        shows: shows.trim() === '' ? `${wordsOf(peg)}, ${round.day}` : shows.trim(),
        jpeg: toBase64(new Uint8Array(jpeg)),
      })),
  };
  const checked = RoundFileSchema.safeParse(file);
  if (checked.success) return { file: checked.data };
  // Only a limit can be passed here (photos, length of a note): the form does not let anything else through.
  return {
    problems: checked.error.issues.map(({ path, message }) => {
      const place = path[0] === 'pegs' ? visited[Number(path[1])] : undefined;
      const sentence = `${path.join(' ')} does not fit into a round file: ${message}.`;
      return { water: place?.water ?? '', peg: place?.peg ?? '', field: 'note', sentence };
    }),
  };
}

/** Turns a file that was handed over back into a round that can be gone on with. */
export function wholeRoundOf(file: RoundFile, unit: 'm' | 'ft'): WholeRound {
  const { ref, venue, guideDay, day, by } = file;
  const notices = new Map((file.notices ?? []).map((notice) => [notice.water, notice]));
  const places = file.places ?? [];
  return {
    round: { ref, venue, guideDay, day, ...(by === undefined ? {} : { by }) },
    pegs: [
      ...file.pegs.map((finding) => pegDraftOf(ref, finding, unit)),
      ...places.map((finding) =>
        placeDraftOf(ref, finding, finding.place === undefined ? notices.get(finding.water) : undefined),
      ),
    ],
    gauges: file.gauges.map((finding) => gaugeDraftOf(ref, finding, unit)),
    photos: file.photos.map(({ jpeg, peg, place, ...photo }) => ({
      ref,
      ...photo,
      peg: peg ?? `${PLACE_MARK}${place ?? ''}`,
      jpeg: fromBase64(jpeg),
    })),
  };
}

function isAtPlace({ peg }: { readonly peg: string }): boolean {
  return peg.startsWith(PLACE_MARK);
}

function whereOf(peg: string): { readonly peg?: string; readonly place?: string } {
  if (!isAtPlace({ peg })) return { peg };
  const place = peg.slice(PLACE_MARK.length);
  return place === '' ? {} : { place };
}

function wordsOf(peg: string): string {
  return isAtPlace({ peg }) ? 'Beside the water' : `Peg ${peg}`;
}

/** In pieces: one call with a megabyte of arguments is more than a phone's stack holds. */
const PIECE = 0x8000;

function toBase64(bytes: Uint8Array): string {
  let binary = '';
  for (let start = 0; start < bytes.length; start += PIECE) {
    binary += String.fromCharCode(...bytes.subarray(start, start + PIECE));
  }
  return btoa(binary);
}

function fromBase64(text: string): ArrayBuffer {
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0)).buffer;
}
