import type { Known } from '../../content/round-file/round-file.ts';
import type { Day } from '../../domain/day.ts';
import type { LatLng } from '../../domain/place.ts';

/** A bank round on this phone. What was noted at its pegs is kept beside it, peg by peg. */
export interface Round {
  readonly ref: string;
  readonly venue: { readonly id: string; readonly name: string };
  readonly guideDay: Day;
  readonly day: Day;
  /** ISO 8601, when the file was last handed over; the round is not changed after that. */
  readonly handedOver?: string;
}

/** What the guide says of a hazard, and what was seen of it: nothing yet, that it is still there, or that it is gone. */
export interface LookedAtDraft {
  readonly kind: string;
  readonly place: string;
  readonly foundOn: Day;
  readonly severity: number;
  readonly likelihood: number;
  readonly did: '' | 'checked' | 'worsened' | 'controlled' | 'cleared';
}

/** A hazard that is not in the guide, as typed. */
export interface FoundDraft {
  readonly id: string;
  readonly kind: string;
  readonly place: string;
  readonly action: string;
  readonly severity: string;
  readonly likelihood: string;
  readonly at?: LatLng;
  /** Id of the photo that shows it. */
  readonly photo?: string;
}

/** Fields of a peg's form that hold one text each, as typed: half a word is kept as well as a whole one. */
export const PEG_FIELDS = [
  'status',
  'reason',
  'platform',
  'clear-width',
  'lowest-branch',
  'path-width',
  'snag-removed',
  'cut',
  'line-distance',
  'line-method',
  'note',
] as const;

export type PegField = (typeof PEG_FIELDS)[number];

/** Everything noted at one peg, as typed. */
export interface PegDraft {
  readonly ref: string;
  readonly water: string;
  readonly peg: string;
  readonly record: string;
  readonly known: Known;
  readonly fields: Readonly<Partial<Record<PegField, string>>>;
  readonly lookedAt: readonly LookedAtDraft[];
  readonly found: readonly FoundDraft[];
  readonly at?: LatLng;
  /** Whether the bailiff was here: set by the first thing noted, or by saying that nothing has changed. */
  readonly seen: boolean;
}

/** The gauge of one water, as typed. */
export interface GaugeDraft {
  readonly ref: string;
  readonly water: string;
  readonly level: string;
  readonly temperature: string;
}

/** A picture, shrunk, with what it shows. */
export interface PhotoDraft {
  readonly ref: string;
  readonly id: string;
  readonly water: string;
  /** The peg, or the place of the map, it was taken at; of the whole water where neither is given. */
  readonly peg?: string;
  readonly place?: string;
  readonly shows: string;
  readonly jpeg: ArrayBuffer;
}

/** A round with all that belongs to it. */
export interface WholeRound {
  readonly round: Round;
  readonly pegs: readonly PegDraft[];
  readonly gauges: readonly GaugeDraft[];
  readonly photos: readonly PhotoDraft[];
}

/** Letters and digits that cannot be taken for one another when read out. */
const REF_CHARACTERS = 'abcdefghjkmnpqrstuvwxyz23456789';

/** A new reference, opaque and short enough to be read out. */
export function newRef(length = 6): string {
  const random = crypto.getRandomValues(new Uint8Array(length));
  return Array.from(random, (byte) => REF_CHARACTERS[byte % REF_CHARACTERS.length]).join('');
}
