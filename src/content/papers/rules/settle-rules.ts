import { createHash } from 'node:crypto';
import { countWords } from '../../../domain/count-words.ts';
import { METRES_PER_FOOT } from '../../../domain/length.ts';
import { EXAMPLE_RULES } from '../../first-venue.ts';
import type { Asker, Question } from '../questions.ts';
import type { Unread } from '../results/result-row.ts';
import { masked, type PrivateWords, privateWords, replaced } from './private-words.ts';
import type { RulesRead } from './read-rules.ts';
import type { RuleLine } from './rule-line.ts';
import { rulesMarkdown } from './rules-markdown.ts';

/** What of the venue rules are read against. */
export interface RulesVenue {
  /** The text of `venue.md` as it stands. */
  readonly standing: string;
  readonly standOffMetres: number;
  /** Whether words are the venue's own: a water, the club, a number or mailbox that it publishes. */
  readonly isOurs: (words: string) => boolean;
  /** Whether the club's register of anglers knows a name. */
  readonly isKnownAngler: (words: string) => boolean;
}

/** Rules ready for `venue.md`. */
export interface SettledRules {
  /** The text below the front matter as it would be; what stands where nothing is new. */
  readonly markdown: string;
  /** What the club should look at before it publishes. */
  readonly warnings: readonly string[];
  readonly unread: readonly Unread[];
}

/** Put where a name, number or mailbox was left out: every page of rules ends in the contacts. */
const LEFT_OUT = '(see the contacts)';

/** Settles what a paper of rules leaves open: what tells of a person, and what becomes of the rules that stand there already. */
export function settleRules(papers: readonly RulesRead[], venue: RulesVenue, asker: Asker): SettledRules {
  const settled = papers.map((paper) => withoutPrivateWords(paper, venue, asker));
  const added = settled.map(({ lines }) => rulesMarkdown(lines)).filter((text) => text !== '');
  return {
    markdown: withStanding(added.join('\n\n'), venue.standing.trim(), papers[0]?.file ?? '', asker),
    warnings: papers.flatMap((paper) => tooNear(paper, venue.standOffMetres)),
    unread: [...papers.flatMap(({ unread }) => unread), ...settled.flatMap(({ unread }) => unread)],
  };
}

function withoutPrivateWords({ file, lines }: RulesRead, venue: RulesVenue, asker: Asker) {
  const unread: Unread[] = [];
  const kept = lines.map((line): RuleLine => {
    const found = privateWords(line, venue.isOurs, venue.isKnownAngler);
    if (found.length === 0) return line;
    const shown = masked(line.text, found);
    const text = replaced(line.text, found, (words, which) => {
      const answer = asker.ask(question(file, line, shown, which, found.indexOf(which)));
      if (answer === 'publish' || answer === 'no-name') return words;
      unread.push({ place: `${file}, line ${line.line}`, what: WORDS[which.kind], why: 'it was to be left out' });
      return LEFT_OUT;
    });
    return { ...line, text: text.replace(/(\(see the contacts\))(?:[\s,:;/]*(?:or|on|and|at)?[\s,:;/]*\1)+/g, '$1') };
  });
  return { lines: kept, unread };
}

const WORDS = { name: 'a name', telephone: 'a telephone number', mailbox: 'a mailbox' } as const;

/** The line is shown with what is private hidden, and its digest asks anew where the words of the line have changed. */
function question(file: string, line: RuleLine, shown: string, { kind }: PrivateWords, place: number): Question {
  const digest = createHash('sha256').update(`${shown}\u0000${place}`).digest('hex').slice(0, 6);
  return {
    scope: 'papers',
    of: file,
    key: `${kind} in line ${line.line} (${digest})`,
    ask:
      kind === 'name'
        ? 'Is this the name of a person? The guide names roles alone.'
        : `May ${WORDS[kind]} of these rules be published?`,
    evidence: [`line ${line.line}: ${shown}`],
    choices:
      kind === 'name'
        ? [
            { value: 'leave-out', words: `a person: write ${LEFT_OUT} in its place` },
            { value: 'no-name', words: 'no person: keep the words' },
          ]
        : [
            { value: 'leave-out', words: `a private one: write ${LEFT_OUT} in its place` },
            { value: 'publish', words: 'the club’s own: keep it' },
          ],
    suggested: 'leave-out',
  };
}

function withStanding(added: string, standing: string, file: string, asker: Asker): string {
  if (added === '' || standing.includes(added)) return standing;
  if (standing === '' || standing === EXAMPLE_RULES) return added;
  const lines = (text: string) => text.split('\n').filter((line) => line.trim() !== '');
  const there = new Set(lines(standing));
  const shared = lines(added).filter((line) => there.has(line)).length;
  // Rules that were put behind others and came again corrected would else stand there twice.
  const key = shared === 0 ? 'standing rules' : 'standing rules, partly these';
  const answer = asker.ask({
    scope: 'papers',
    of: file,
    key,
    ask: 'venue.md holds a text of rules already. What becomes of it?',
    evidence: [
      `it has ${countWords(lines(standing).length, 'line')} and begins: ${lines(standing)[0]?.slice(0, 80)}`,
      ...(shared === 0
        ? []
        : [`${shared} of the ${lines(added).length} lines of this paper stand in it word for word`]),
    ],
    choices: [
      { value: 'replace', words: 'these rules take its place' },
      { value: 'add', words: 'these rules are written below it' },
    ],
  });
  return answer === 'replace' ? added : `${standing}\n\n${added}`;
}

const LINE_WORDS = /overhead|power ?line|pylon|electric|cable/i;
const DISTANCE = /(\d+(?:\.\d+)?)\s*(m|metres?|meters?|yds?|yards?|ft|feet)\b/gi;

/** A rule that lets an angler nearer to a line than the guide does would be read as the club's leave. */
function tooNear({ file, lines }: RulesRead, standOffMetres: number): readonly string[] {
  return lines
    .filter(({ text }) => LINE_WORDS.test(text))
    .flatMap(({ text, line }) =>
      [...text.matchAll(DISTANCE)]
        .filter(([, figure, unit]) => Number(figure) * metresOf(unit!) < standOffMetres - 0.5)
        .map(
          ([written]) =>
            `${file}, line ${line}: warning: found ${written} in a rule on overhead lines, and this guide keeps ${standOffMetres} m along the ground. Unless it is another measure, put the rule right before you publish it: the greater distance holds.`,
        ),
    );
}

function metresOf(unit: string): number {
  if (/^y/i.test(unit)) return 3 * METRES_PER_FOOT;
  return /^f/i.test(unit) ? METRES_PER_FOOT : 1;
}
