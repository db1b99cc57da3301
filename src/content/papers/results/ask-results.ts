import { createHash } from 'node:crypto';
import type { BagPart } from '../../../domain/bag.ts';
import { countWords } from '../../../domain/count-words.ts';
import { isDay } from '../../../domain/day.ts';
import type { SessionStatus } from '../../../domain/session.ts';
import { headingWords } from '../headings.ts';
import type { Question } from '../questions.ts';
import { EMPTY_MARK } from './sheet-weight.ts';

/** What the headings of a paper have in common with those of another from the same hand. */
export function shapeOf(headings: readonly string[]): string {
  return createHash('sha256').update(headings.map(headingWords).join('|')).digest('hex').slice(0, 8);
}

const MEANINGS: readonly { readonly value: SessionStatus; readonly words: string }[] = [
  { value: 'dnw', words: 'fished and did not weigh in' },
  { value: 'blank', words: 'weighed in with nothing' },
  { value: 'absent', words: 'drew the peg and did not fish' },
  { value: 'disqualified', words: 'disqualified' },
];

const USUAL: Readonly<Record<string, SessionStatus>> = {
  DNW: 'dnw',
  'DID NOT WEIGH': 'dnw',
  '-': 'dnw',
  '–': 'dnw',
  '—': 'dnw',
  DQ: 'disqualified',
  DISQ: 'disqualified',
  DISQUALIFIED: 'disqualified',
  DNS: 'absent',
  ABSENT: 'absent',
  'NO SHOW': 'absent',
  BLANK: 'blank',
};

/** What a word or sign in the column of weights means on this club's sheets. A nought is never taken for a blank unasked. */
export function markQuestion(shape: string, mark: string, places: readonly string[]): Question {
  const words =
    mark === EMPTY_MARK ? 'a row with a peg and a name and no weight' : `"${mark}" in the column of weights`;
  const usual = USUAL[mark];
  return {
    scope: 'shapes',
    of: shape,
    key: `mark ${mark}`,
    ask: `What does ${words} mean on these sheets?`,
    evidence: [`seen ${countWords(places.length, 'time')}, first at ${places[0]}`],
    choices: MEANINGS,
    ...(usual === undefined ? {} : { suggested: usual }),
  };
}

/** What bare decimals mean, with what their fractions say. */
export function decimalsQuestion(shape: string, examples: readonly string[]): Question {
  const fractions = examples.map((text) => Number(/[.,](\d+)$/.exec(text)?.[1] ?? 0));
  const most = Math.max(...fractions);
  const looksLikeOunces = most <= 15 && fractions.some((fraction) => fraction >= 10 || fraction > 0);
  return {
    scope: 'shapes',
    of: shape,
    key: 'decimals',
    ask: `What do weights such as ${examples.slice(0, 4).join(', ')} mean?`,
    evidence: [
      looksLikeOunces
        ? `no fraction of ${examples.length} is above .15, as with pounds and ounces`
        : `the largest fraction of ${examples.length} is .${most}: ounces end at .15`,
    ],
    choices: [
      { value: 'pounds-ounces', words: 'pounds and ounces: 23.8 is 23 lb 8 oz' },
      { value: 'pounds', words: 'decimal pounds: 23.8 is 23.8 lb' },
      { value: 'kilograms', words: 'kilograms: 23.8 is 23.8 kg' },
    ],
    ...(looksLikeOunces ? { suggested: 'pounds-ounces' } : {}),
  };
}

/** Whether a number shown as 23.1 was 23.1 or 23.10: a spreadsheet drops the nought. */
export function tenthsQuestion(shape: string, places: readonly string[]): Question {
  return {
    scope: 'shapes',
    of: shape,
    key: 'point one',
    ask: 'In cells kept as numbers, does .1 mean 1 ounce, or 10 ounces whose nought the spreadsheet dropped?',
    evidence: [`seen ${countWords(places.length, 'time')}, first at ${places[0]}`],
    choices: [
      { value: 'one', words: '1 oz' },
      { value: 'ten', words: '10 oz' },
    ],
  };
}

/** Whether cells a spreadsheet turned into dates were pounds and ounces. */
export function datesQuestion(shape: string, examples: readonly string[]): Question {
  return {
    scope: 'shapes',
    of: shape,
    key: 'weights as dates',
    ask: `The spreadsheet has made dates of weights (${examples.slice(0, 3).join(', ')}). Were they pounds and ounces, the pounds first?`,
    evidence: [`${examples.length} cells`],
    choices: [
      { value: 'pounds-ounces', words: 'yes: 4 May was 4 lb 5 oz' },
      { value: 'leave', words: 'no: leave these rows out and list them' },
    ],
  };
}

/** What a column nobody can tell holds. */
export function columnQuestion(
  shape: string,
  heading: string,
  examples: readonly string[],
  parts: readonly BagPart[],
): Question {
  return {
    scope: 'shapes',
    of: shape,
    key: `column ${heading}`,
    ask: `What does the column "${heading}" hold?`,
    evidence: [`for example ${examples.slice(0, 3).join(', ')}`],
    choices: [
      { value: 'leave', words: 'nothing for the log: leave it' },
      { value: 'section', words: 'the section' },
      { value: 'name', words: 'the angler' },
      { value: 'weight', words: 'the weight of the whole bag' },
      ...parts.flatMap(({ id, name }) => [
        { value: `${id} weight`, words: `weight of ${name.toLowerCase()}` },
        { value: `${id} count`, words: `number of ${name.toLowerCase()}` },
      ]),
    ],
    suggested: 'leave',
  };
}

/** The day of a match, where its paper does not say. */
export function dayQuestion(paper: string, key: string, titles: readonly string[]): Question {
  return {
    scope: 'papers',
    of: paper,
    key,
    ask: `On which day was ${key === 'day' ? 'this match' : `the match of ${key.slice(4)}`} fished (such as 2026-07-12)?`,
    evidence:
      titles.length === 0 ? ['no day stands above the table'] : [`above it stands: ${titles.slice(0, 3).join(' · ')}`],
    choices: null,
    check: (answer) => (isDay(answer) ? null : 'Expected a day such as 2026-07-12.'),
  };
}

/** The water of a match, where its paper does not say. */
export function waterQuestion(
  paper: string,
  key: string,
  pegs: readonly string[],
  waters: readonly { readonly id: string; readonly name: string; readonly holds: number }[],
): Question {
  const all = waters.filter(({ holds }) => holds === pegs.length);
  return {
    scope: 'papers',
    of: paper,
    key,
    ask: 'Which water was it?',
    evidence: waters.map(({ name, holds }) => `${name} has ${holds} of the ${pegs.length} pegs`),
    choices: waters.map(({ id, name }) => ({ value: id, words: name })),
    ...(all.length === 1 ? { suggested: all[0]!.id } : {}),
  };
}

/** Whether every weight is on the paper, or the frame alone. */
export function listingQuestion(paper: string, rows: number): Question {
  return {
    scope: 'papers',
    of: paper,
    key: 'listing',
    ask: 'Does this paper list everybody who fished, or the places that framed alone?',
    evidence: [`${countWords(rows, 'angler')} on it`],
    choices: [
      { value: 'full', words: 'everybody' },
      { value: 'frame', words: 'the frame alone' },
    ],
  };
}

/** A whole number a paper does not state: places paid, anglers fished. */
export function countQuestion(paper: string, key: string, ask: string, least: number, suggested?: string): Question {
  return {
    scope: 'papers',
    of: paper,
    key,
    ask,
    evidence: [],
    choices: null,
    check: (answer) =>
      /^\d{1,4}$/.test(answer) && Number(answer) >= least ? null : `Expected a whole number, ${least} or more.`,
    ...(suggested === undefined ? {} : { suggested }),
  };
}

/** How many hours were fished. */
export function hoursQuestion(paper: string, suggested: string | undefined): Question {
  return {
    scope: 'papers',
    of: paper,
    key: 'hours',
    ask: 'How many hours were fished (such as 5)?',
    evidence: [],
    choices: null,
    check: (answer) =>
      /^\d{1,2}(\.\d)?$/.test(answer) && Number(answer) >= 0.5 && Number(answer) <= 72
        ? null
        : 'Expected hours such as 5 or 4.5.',
    ...(suggested === undefined ? {} : { suggested }),
  };
}

/** The sheet's own sum or order says something else than its rows: a slip of the pen, and only the club knows whose. */
export function disagreementQuestion(paper: string, key: string, ask: string, evidence: readonly string[]): Question {
  return {
    scope: 'papers',
    of: paper,
    key,
    ask: `${ask} Take the rows as they stand?`,
    evidence,
    choices: [
      { value: 'take', words: 'take the rows' },
      { value: 'stop', words: 'stop: the sheet has to be put right first' },
    ],
  };
}

/** Rows a spreadsheet hides may be left over from another match. */
export function hiddenRowsQuestion(paper: string, rows: readonly number[]): Question {
  return {
    scope: 'papers',
    of: paper,
    key: 'hidden rows',
    ask:
      rows.length === 1
        ? 'A row of results is hidden in the spreadsheet. Does it count?'
        : `${rows.length} rows of results are hidden in the spreadsheet. Do they count?`,
    evidence: [`${rows.length === 1 ? 'row' : 'rows'} ${rows.map((row) => row + 1).join(', ')}`],
    choices: [
      { value: 'take', words: 'take them like the others' },
      { value: 'leave', words: 'leave them out' },
    ],
  };
}
