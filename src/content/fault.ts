/** How bad: an `error` stops the build, a `warning` is for the club to look at. */
export type Severity = 'error' | 'warning';

/** One thing wrong in the venue folder, as data; `format-fault.ts` makes its sentence. */
export interface Fault {
  /** Path inside the venue folder, with forward slashes. */
  readonly file: string;
  /** 1-based; 1 where the whole file is meant. */
  readonly line: number;
  readonly column: number;
  /** The field or column, as the writer names it: `platform.width`, `silvers_weight`. Empty for the whole file. */
  readonly field: string;
  /** Stable word for the rule broken: `weight-ounces`, `peg-unknown`. */
  readonly rule: string;
  /** What is wrong in one sentence, where "Unexpected …, expected …" of what was found would not read as one. */
  readonly sentence?: string;
  readonly found: string;
  readonly expected: string;
  /** What the writer should do. */
  readonly mend: string;
  readonly severity: Severity;
}

/** A row or file that was not used, and why. Nothing is dropped in silence. */
export interface LeftOut {
  readonly file: string;
  readonly line: number;
  readonly what: string;
  readonly why: string;
}
