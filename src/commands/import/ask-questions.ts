import { stringify } from 'yaml';
import {
  type Asker,
  answerFault,
  type KeptAnswers,
  NO_ANSWERS,
  type Question,
  withAnswer,
} from '../../content/papers/questions.ts';
import { visibleLines } from '../../domain/hidden-characters.ts';
import type { CommandIo, Prompts } from '../command-io.ts';

/** What questions of the venue itself, not of one paper, are kept under. */
const OWN = 'start';

/** Puts the open questions to the person, one after the other. Null where one was left without an answer. */
export async function askQuestions(
  questions: readonly Question[],
  kept: KeptAnswers,
  ask: NonNullable<CommandIo['ask']>,
  io: CommandIo,
): Promise<KeptAnswers | null> {
  let answers = kept;
  for (const question of questions) {
    const answer =
      io.prompts === undefined ? await typedAnswer(question, ask, io) : await prompted(question, io.prompts);
    if (answer === null) return null;
    answers = withAnswer(answers, question, answer);
  }
  return answers;
}

/** A question at a terminal: choices to walk through, or an answer that is refused with the reason while it is typed. */
async function prompted(question: Question, prompts: Prompts): Promise<string | null> {
  const { scope, of, ask, evidence, choices, suggested } = question;
  const message = visibleLines([scope === 'papers' && of !== OWN ? `${of}: ${ask}` : ask, ...evidence].join('\n'));
  const offer = suggested === undefined ? {} : { suggested };
  if (choices !== null) {
    const shown = choices.map(({ value, words }) => ({ value, words: visibleLines(`${value}: ${words}`) }));
    return prompts.choose({ message, choices: shown, ...offer });
  }
  const fault = (answer: string) => (answer === '' ? 'An answer is needed.' : answerFault(question, answer));
  return prompts.text({ message, fault, ...offer });
}

async function typedAnswer(
  question: Question,
  ask: NonNullable<CommandIo['ask']>,
  io: CommandIo,
): Promise<string | null> {
  io.printError('');
  for (const line of questionLines(question)) io.printError(line);
  return oneAnswer(question, ask, io);
}

/** Three tries, then the person is let go. */
async function oneAnswer(
  question: Question,
  ask: NonNullable<CommandIo['ask']>,
  io: CommandIo,
): Promise<string | null> {
  for (let attempt = 0; attempt < 3; attempt++) {
    const offer = question.suggested === undefined ? '' : ` [${question.suggested}]`;
    const typed = (await ask(`${question.choices === null ? 'Answer' : 'Number or word'}${offer}: `)).trim();
    const text = typed === '' ? (question.suggested ?? '') : typed;
    const answer = question.choices?.[Number(text) - 1]?.value ?? text;
    const fault = answer === '' ? 'An answer is needed.' : answerFault(question, answer);
    if (fault === null) return answer;
    io.printError(fault);
  }
  return null;
}

/** A question as a person reads it. */
function questionLines({ of, scope, ask, evidence, choices, suggested }: Question): readonly string[] {
  const where = scope === 'papers' && of !== OWN ? `${of}: ` : '';
  return [
    `${where}${ask}`,
    ...evidence.map((line) => `    ${line}`),
    ...(choices ?? []).map(
      ({ value, words }, index) => `  ${index + 1}  ${value}: ${words}${value === suggested ? ' (likely)' : ''}`,
    ),
  ];
}

/** The open questions for somebody who is not there to be asked: what to write into the file of answers. */
export function openQuestionLines(asker: Asker, path: string): readonly string[] {
  const unanswered = asker.open.reduce(
    (answers, question) => withAnswer(answers, question, question.suggested ?? '…'),
    NO_ANSWERS,
  );
  const scopes = Object.entries(unanswered).filter(([, own]) => Object.keys(own).length > 0);
  return [
    ...asker.refused.map(
      ({ question, answer, why }) =>
        `${path}: ${question.scope}.${question.of}."${question.key}": unexpected "${answer}". ${why}`,
    ),
    `${asker.open.length} ${asker.open.length === 1 ? 'question needs an answer' : 'questions need answers'}. Run this at a terminal to be asked, or write the answers into a file:`,
    ...asker.open.flatMap((question) => ['', ...questionLines(question)]),
    '',
    `What to write into ${path}, with your answers (a line under all: holds for every paper):`,
    '',
    ...stringify(Object.fromEntries(scopes)).trimEnd().split('\n'),
    '',
  ];
}
