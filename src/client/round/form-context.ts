import type { BankRoundData } from '../../atlas/bank-round-page.ts';
import type { Day } from '../../domain/day.ts';
import type { PegDraft, PhotoDraft } from './draft.ts';

/** What the form of a peg or a place works on, and whom it tells of changes. */
export interface FormContext {
  readonly data: BankRoundData;
  readonly draft: PegDraft;
  readonly photos: readonly PhotoDraft[];
  /** The day it is: the phone's, or what the bailiff said instead. */
  readonly today: () => Day;
  readonly onChange: (draft: PegDraft) => void;
  readonly onPhoto: (photo: PhotoDraft) => void;
  readonly onPhotoRemoved: (id: string) => void;
  readonly onNext: () => void;
  /** Takes back everything noted here. */
  readonly onTakeBack: () => void;
  /** Told when a position was taken, for the clock. */
  readonly onFix: (takenAt: number) => void;
}

/** A form that is open, and what shows in it that another window changed the draft. */
export interface OpenForm {
  readonly form: HTMLFormElement;
  readonly refresh: (draft: PegDraft) => void;
}
