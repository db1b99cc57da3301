import type { FitOptions, LatentFit, StopReason } from './engine/latent-model.ts';

/** Where a fit may begin, from an earlier one of nearly the same log. */
export type FitStart = NonNullable<FitOptions['start']>;

/** How one fit behind the tables ended. Plain data, so that a fit of a longer log can start from it. */
export interface FitReport {
  /** `total`, the id of a bag part, or what else was fitted ("back-test"). */
  readonly of: string;
  readonly stopped: StopReason;
  readonly steps: number;
  readonly isSettled: boolean;
  readonly start: FitStart;
}

/** Told what is being worked on, and how each fit ended. */
export interface FitListener {
  readonly progress?: ((what: string) => void) | undefined;
  readonly report?: ((of: string, fit: FitEnd) => void) | undefined;
}

/** How a fit ended. */
export type FitEnd = Pick<LatentFit, 'stopped' | 'iterations' | 'sd' | 'residualSd'>;

const SETTLED: ReadonlySet<StopReason> = new Set(['converged', 'boundary', 'held', 'no data']);

/** False where a fit stopped short of its best variances: its figures stand, and its evidence is thin whatever the log holds. */
export function isSettled({ stopped }: Pick<LatentFit, 'stopped'>): boolean {
  return SETTLED.has(stopped);
}

export function fitReport(of: string, { stopped, iterations, sd, residualSd }: FitEnd): FitReport {
  return { of, stopped, steps: iterations, isSettled: isSettled({ stopped }), start: { sd, residualSd } };
}

/** A fit that stopped short of its best variances. */
export interface UnsettledFit extends Pick<FitReport, 'of' | 'stopped' | 'steps'> {
  readonly about: 'unsettled-fit';
}

/** What a reader must know of fits that did not settle; nothing where all did. */
export function unsettledNotes(fits: readonly FitReport[]): UnsettledFit[] {
  return fits
    .filter((fit) => !fit.isSettled)
    .map(({ of, stopped, steps }) => ({ about: 'unsettled-fit', of, stopped, steps }));
}
