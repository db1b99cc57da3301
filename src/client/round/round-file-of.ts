import { ROUND_FORMAT, ROUND_VERSION, type RoundFile, RoundFileSchema } from '../../content/round-file/round-file.ts';
import type { WholeRound } from './draft.ts';
import { gaugeDraftOf, pegDraftOf } from './draft-of.ts';
import { gaugeFindingOf, type Problem, pegFindingOf } from './finding-of.ts';

/** The file of a round, or what has to be mended before there is one. */
export type MadeFile = { readonly file: RoundFile } | { readonly problems: readonly Problem[] };

/** Turns a round into the file that is handed over. Pegs that were not visited are not in it. */
export function roundFileOf({ round, pegs, gauges, photos }: WholeRound, unit: 'm' | 'ft'): MadeFile {
  const visited = pegs.filter(({ seen }) => seen);
  const findings = visited.map((draft) => pegFindingOf(draft, unit));
  const readings = gauges.map((draft) => gaugeFindingOf(draft, unit)).filter((reading) => reading !== null);
  const problems = [...findings, ...readings].flatMap((one) => one.problems);
  if (problems.length > 0) return { problems };
  const file = {
    format: ROUND_FORMAT,
    version: ROUND_VERSION,
    venue: round.venue,
    guideDay: round.guideDay,
    ref: round.ref,
    day: round.day,
    pegs: findings.map(({ finding }) => finding),
    gauges: readings.map(({ finding }) => finding),
    photos: photos
      .filter((photo) => visited.some(({ water, peg }) => photo.water === water && photo.peg === peg))
      .map(({ id, water, peg, place, shows, jpeg }) => ({
        id,
        water,
        ...(peg === undefined ? {} : { peg }),
        ...(place === undefined ? {} : { place }),
        shows: shows.trim() === '' ? `Peg ${peg}, ${round.day}` : shows.trim(),
        jpeg: toBase64(new Uint8Array(jpeg)),
      })),
  } as const satisfies RoundFile;
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
  const { ref, venue, guideDay, day } = file;
  return {
    round: { ref, venue, guideDay, day },
    pegs: file.pegs.map((finding) => pegDraftOf(ref, finding, unit)),
    gauges: file.gauges.map((finding) => gaugeDraftOf(ref, finding, unit)),
    photos: file.photos.map(({ jpeg, ...photo }) => ({ ref, ...photo, jpeg: fromBase64(jpeg) })),
  };
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
