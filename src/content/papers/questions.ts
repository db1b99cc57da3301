/** Something a paper does not say for itself. The club answers; the answer is kept outside the venue folder. */
export interface Question {
  /** What the answer holds for: every paper, papers with the same headings, this paper, or one angler of the log. */
  readonly scope: 'shapes' | 'papers' | 'anglers';
  /** Which shape, paper or angler: a digest of the headings, the paper's file name, a digest of the name. */
  readonly of: string;
  /** Word of the question within its scope: `day`, `mark DNW`. */
  readonly key: string;
  readonly ask: string;
  /** What was seen that bears on it, a line each. */
  readonly evidence: readonly string[];
  /** The answers there are; null where any text that `check` accepts will do. */
  readonly choices: readonly { readonly value: string; readonly words: string }[] | null;
  /** Offered to a person who just presses Enter; never taken unasked. */
  readonly suggested?: string;
  /** What is wrong with an answer, null where nothing is. Only where there are no choices. */
  readonly check?: (answer: string) => string | null;
}

/** Kept answers: `all` for every paper, then by scope and what it is of. */
export interface KeptAnswers {
  readonly all: Readonly<Record<string, string>>;
  readonly shapes: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly papers: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly anglers: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

export const NO_ANSWERS: KeptAnswers = { all: {}, shapes: {}, papers: {}, anglers: {} };

/** The answer kept for a question, or null. The narrower one stands before that for all. */
function keptAnswer(kept: KeptAnswers, { scope, of, key }: Pick<Question, 'scope' | 'of' | 'key'>): string | null {
  const own = Object.hasOwn(kept[scope], of) ? kept[scope][of] : undefined;
  if (own !== undefined && Object.hasOwn(own, key)) return own[key]!;
  return scope !== 'anglers' && Object.hasOwn(kept.all, key) ? kept.all[key]! : null;
}

/** The same answers with one more. */
export function withAnswer(kept: KeptAnswers, { scope, of, key }: Question, answer: string): KeptAnswers {
  return { ...kept, [scope]: { ...kept[scope], [of]: { ...kept[scope][of], [key]: answer } } };
}

/** What is wrong with an answer, null where it will do. */
export function answerFault({ choices, check }: Question, answer: string): string | null {
  if (choices === null) return check?.(answer) ?? null;
  if (choices.some(({ value }) => value === answer)) return null;
  return `Expected one of ${choices.map(({ value }) => value).join(', ')}.`;
}

/**
 * Asks while something is read: answers what is kept, notes what is not. A reader goes on with what it can, so that all
 * open questions of a run come out at once.
 */
export class Asker {
  readonly #kept: KeptAnswers;
  readonly #open = new Map<string, Question>();
  readonly #refused: { readonly question: Question; readonly answer: string; readonly why: string }[] = [];

  constructor(kept: KeptAnswers) {
    this.#kept = kept;
  }

  /** The kept answer, or null: then the question is open. */
  ask(question: Question): string | null {
    const answer = keptAnswer(this.#kept, question);
    if (answer !== null) {
      const why = answerFault(question, answer);
      if (why === null) return answer;
      this.#refused.push({ question, answer, why });
    }
    this.#open.set(`${question.scope}/${question.of}/${question.key}`, question);
    return null;
  }

  /** Questions nobody has answered yet, in the order they came up, each once. */
  get open(): readonly Question[] {
    return [...this.#open.values()];
  }

  /** Kept answers that are none of those a question allows. */
  get refused(): readonly { readonly question: Question; readonly answer: string; readonly why: string }[] {
    return this.#refused;
  }
}
