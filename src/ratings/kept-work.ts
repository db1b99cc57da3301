/** What runs before this one worked out, each under a digest of all that it came of. Plain data. */
export type KeptWork = Readonly<Record<string, unknown>>;

/** Does work, or gives what is kept of the same work on the same inputs. What is kept holds numbers, texts and nulls. */
export interface WorkKeeper {
  /** @param inputs All that the result depends on, written as text, but for the code itself. */
  readonly of: <Result>(inputs: readonly string[], work: () => Result) => Result;
  /** Digests of the first so many items of a list; each is read once where beginnings are asked for in their order. */
  readonly beginnings: (list: readonly unknown[]) => (count: number) => string;
}

/** Keeps nothing: all is worked out. */
export const NOTHING_KEPT: WorkKeeper = { of: (_, work) => work(), beginnings: () => () => '' };
