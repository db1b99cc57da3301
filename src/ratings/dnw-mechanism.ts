/**
 * Who does not weigh: an angler with log bag y, in an event whose weighed bags have the log middle m, leaves without
 * weighing with chance Φ((m + shift − y) / blur). A small blur: all below a line go home; a large one: it hardly has to do
 * with the bag.
 */
export interface DnwMechanism {
  readonly shift: number;
  readonly blur: number;
}

/** Why a log taught nothing of its DNWs: `few-dnw` and `few-weighed` of the events that list every weight, counted. */
export type DnwSilence =
  | { readonly why: 'none-weighed' | 'all-weighed' | 'not-told' }
  | { readonly why: 'few-dnw' | 'few-weighed'; readonly count: number };

/** What a log taught of its DNWs; without a mechanism, why it taught nothing. */
export type DnwLesson =
  | { readonly mechanism: DnwMechanism; readonly gain: number }
  | ({ readonly mechanism: null } & DnwSilence);
