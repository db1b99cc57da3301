import type { RuleLine } from './rule-line.ts';

/** Words of a rule that may tell of a person, and where in its text they stand. */
export interface PrivateWords {
  readonly kind: 'name' | 'telephone' | 'mailbox';
  readonly start: number;
  readonly end: number;
}

const MAILBOX = /[^\s<>()[\]@,;:"]+@[^\s<>()[\]@,;:"]+\.[a-z]{2,}/gi;
/** A number of the United Kingdom with its area, however it is parted: ten or eleven digits from 0 or +44 on. */
const TELEPHONE = /(?:\+44(?:\s*\(0\))?|\(?0)(?:[\s()-]*\d){9,10}(?!\d)/g;
const ROLE =
  /\b(?:contact|secretary|bailiff|chair(?:man|woman|person)?|treasurer|president|organiser|captain|officer|warden|keeper|steward|owner|ring|call|phone|telephone|ask|see|by)\b/i;
const TITLE = /^(?:mr|mrs|ms|miss|dr)\.?$/i;
/** Words with capitals in a row. */
const CAPITALISED = /\p{Lu}[\p{L}.'’-]*(?:\s+\p{Lu}[\p{L}.'’-]*)+/gu;
/** Words that take a capital at the head of a sentence and are no part of a name. */
const OPENING =
  /^(?:the|all|any|no|a|an|our|please|contact|ring|call|phone|ask|see|match|head|club|general|membership|hon|honorary)$/i;

/**
 * Finds what may be somebody's name, number or mailbox. Two words with capitals count behind a word such as secretary or ring, or
 * where the club's register knows them; words of the venue itself (its waters, its club) never do.
 */
export function privateWords(
  { text }: RuleLine,
  isOurs: (words: string) => boolean,
  isKnownAngler: (words: string) => boolean,
): readonly PrivateWords[] {
  const found: PrivateWords[] = [];
  const add = (kind: PrivateWords['kind'], start: number, words: string) => {
    const end = start + words.length;
    if (found.every((other) => end <= other.start || start >= other.end)) found.push({ kind, start, end });
  };
  for (const match of text.matchAll(MAILBOX)) if (!isOurs(match[0])) add('mailbox', match.index, match[0]);
  for (const match of text.matchAll(TELEPHONE))
    if (!isOurs(match[0])) add('telephone', match.index, match[0].trimEnd());
  const role = ROLE.exec(text)?.index ?? Number.POSITIVE_INFINITY;
  for (const match of text.matchAll(CAPITALISED)) {
    for (const name of namesIn(match[0], match.index >= role || ROLE.test(match[0]), isOurs, isKnownAngler)) {
      add('name', match.index + name.at, name.words);
    }
  }
  return found.sort((a, b) => a.start - b.start);
}

function namesIn(
  run: string,
  isBehindRole: boolean,
  isOurs: (words: string) => boolean,
  isKnownAngler: (words: string) => boolean,
): readonly { readonly words: string; readonly at: number }[] {
  const words = [...run.matchAll(/\S+/g)].map(([word], index, all) => ({ word, at: all[index]!.index }));
  const first = words.findIndex(({ word }) => !ROLE.test(word) && !OPENING.test(word) && !TITLE.test(word));
  if (first === -1) return [];
  const isTitled = first > 0 && TITLE.test(words[first - 1]!.word);
  const left = words.slice(first);
  const name = run.slice(left[0]!.at).replace(/[.'’-]+$/, '');
  const isWritten = left.every(({ word }) => /\p{Ll}/u.test(word) || /^\p{Lu}\.?$/u.test(word));
  const isLikely = isTitled || (isBehindRole && left.length > 1 && left.length <= 4 && isWritten && !isOurs(name));
  return isLikely || isKnownAngler(name) ? [{ words: name, at: left[0]!.at }] : [];
}

/** The line as it may be shown and kept: every letter but the first of what is private is hidden. */
export function masked(text: string, found: readonly PrivateWords[]): string {
  return replaced(text, found, (words) =>
    words.replace(/[\p{L}\d]/gu, (letter, at: number) => (at === 0 || words[at - 1] === ' ' ? letter : '·')),
  );
}

/** The text with each of the found words in another form. */
export function replaced(
  text: string,
  found: readonly PrivateWords[],
  form: (words: string, which: PrivateWords) => string,
): string {
  let result = '';
  let from = 0;
  for (const each of found) {
    result += text.slice(from, each.start) + form(text.slice(each.start, each.end), each);
    from = each.end;
  }
  return result + text.slice(from);
}
