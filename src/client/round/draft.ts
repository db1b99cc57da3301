import type { Fix, Known } from '../../content/round-file/round-file.ts';
import { CLEARANCE_MEASURES } from '../../domain/clearance-measures.ts';
import type { Day } from '../../domain/day.ts';

/** A bank round on this phone. What was noted at its pegs is kept beside it, peg by peg. */
export interface Round {
  readonly ref: string;
  readonly venue: { readonly id: string; readonly name: string };
  readonly guideDay: Day;
  readonly day: Day;
  /** ISO 8601, when the file was last handed over; the round is not changed after that. */
  readonly handedOver?: string;
  /** Days to add to the phone's calendar, where the bailiff said that its clock is wrong. */
  readonly clockDays?: number;
  /** The role that walks, never a name. */
  readonly by?: string;
  /** Where the bailiff last noted something: the round is gone on with from there. */
  readonly lastAt?: { readonly water: string; readonly peg: string };
}

/** What the guide says of a hazard, and what was seen of it: nothing yet, that it is still there, or that it is gone. */
export interface LookedAtDraft {
  readonly kind: string;
  readonly place: string;
  readonly foundOn: Day;
  readonly severity: number;
  readonly likelihood: number;
  readonly did: '' | 'checked' | 'worsened' | 'controlled' | 'cleared';
  /** Of one that is worse: the new score; of one that was dealt with: the score after that. As chosen. */
  readonly severityNow?: string;
  readonly likelihoodNow?: string;
  readonly control?: string;
  /** Who decided that it is cleared (a role), why, and a photo of it. */
  readonly by?: string;
  readonly why?: string;
  readonly photo?: string;
  /** The day it was seen. */
  readonly day?: Day;
}

/** A hazard that is not in the guide, as typed. */
export interface FoundDraft {
  readonly id: string;
  readonly kind: string;
  readonly place: string;
  readonly action: string;
  readonly severity: string;
  readonly likelihood: string;
  readonly at?: Fix;
  /** Id of the photo that shows it. */
  readonly photo?: string;
  readonly day?: Day;
}

/** Fields of a form, a peg's or a place's, that hold one text each, as typed: half a word is kept as well as a whole one. */
export const PEG_FIELDS = [
  'status',
  'reason',
  'platform',
  ...CLEARANCE_MEASURES.map(({ key }) => key),
  'snag-removed',
  'cut',
  'line-distance',
  'line-method',
  'note',
  'until',
  'kit',
  'closing',
  'notice-title',
  'notice-kind',
  'notice-text',
  'notice-until',
] as const;

export type PegField = (typeof PEG_FIELDS)[number];

/** What stands before the id of a place in `peg`: no peg's name has it. Alone it means the whole water. */
export const PLACE_MARK = '@';

/** Everything noted at one peg, or at one place that is no peg, as typed. */
export interface PegDraft {
  readonly ref: string;
  readonly water: string;
  readonly peg: string;
  readonly record: string;
  readonly known: Known;
  readonly fields: Readonly<Partial<Record<PegField, string>>>;
  /** The day each field was noted. */
  readonly days?: Readonly<Partial<Record<PegField | 'at', Day>>>;
  readonly lookedAt: readonly LookedAtDraft[];
  readonly found: readonly FoundDraft[];
  readonly at?: Fix;
  /** The day the first thing was noted. */
  readonly seenOn?: Day;
  /** Whether the bailiff was here: set by the first thing noted, or by saying that nothing has changed. */
  readonly seen: boolean;
}

/** The gauge of one water, as typed. */
export interface GaugeDraft {
  readonly ref: string;
  readonly water: string;
  readonly level: string;
  readonly temperature: string;
  /** The day it was read. */
  readonly day?: Day;
}

/** A picture, shrunk, with what it shows. */
export interface PhotoDraft {
  readonly ref: string;
  readonly id: string;
  readonly water: string;
  /** The peg it was taken at, or a place behind its mark. */
  readonly peg: string;
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
