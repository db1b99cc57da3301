import type { SafetySourceId } from './safety-sources.ts';

/** One sentence or two that rest on one source. `{name}` stands for a number or figure of the venue. */
export interface SafetySentence {
  readonly say: string;
  readonly source: SafetySourceId;
}

/** What to do, or keep to, about one thing: the one home of its words. */
export interface SafetyText {
  /** Its fragment on the safety page. */
  readonly id: string;
  readonly heading: string;
  /** ISO 7010 code. */
  readonly sign: string;
  /** The kind of hazard whose advice it begins with. */
  readonly kind?: string;
  readonly sentences: readonly SafetySentence[];
  /** Who comes before this text. */
  readonly defers: SafetySentence;
}

/** A sentence with its source. */
export function says(say: string, source: SafetySourceId): SafetySentence {
  return { say, source };
}

/** A number or figure of the venue by its name; null where the venue has none. */
export type SafetyFigures = (name: string) => string | null;

/** A sentence with the venue's figures in it; null where it speaks of one the venue does not have. */
export function sentenceWords({ say }: Pick<SafetySentence, 'say'>, figures: SafetyFigures): string | null {
  let isWhole = true;
  const words = say.replace(/\{([a-z-]+)\}/g, (_, name: string) => {
    const figure = figures(name);
    if (figure === null) isWhole = false;
    return figure ?? '';
  });
  return isWhole ? words : null;
}
