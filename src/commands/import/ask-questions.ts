import {
  type Asker,
  answerFault,
  type KeptAnswers,
  type Question,
  withAnswer,
} from '../../content/papers/questions.ts';
import type { CommandIo } from '../command-io.ts';

/** Puts the open questions to the person, one after the other. Null where one was left without an answer. */
export async function askQuestions(
  questions: readonly Question[],
  kept: KeptAnswers,
  ask: NonNullable<CommandIo['ask']>,
  io: CommandIo,
): Promise<KeptAnswers | null> {
  let answers = kept;
  for (const question of questions) {
    io.printError('');
    for (const line of questionLines(question)) io.printError(line);
    const answer = await oneAnswer(question, ask, io);
    if (answer === null) return null;
    answers = withAnswer(answers, question, answer);
  }
  return answers;
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
export function questionLines({ of, scope, ask, evidence, choices, suggested }: Question): readonly string[] {
  const where = scope === 'papers' ? `${of}: ` : '';
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
  return [
    ...asker.refused.map(
      ({ question, answer, why }) =>
        `${path}: ${question.scope}.${question.of}."${question.key}": unexpected "${answer}". ${why}`,
    ),
    `${asker.open.length} ${asker.open.length === 1 ? 'question needs an answer' : 'questions need answers'}. Run this at a terminal to be asked, or write into ${path}:`,
    ...asker.open.flatMap((question) => [
      '',
      ...questionLines(question),
      `  → ${question.scope}: { "${question.of}": { "${question.key}": ${question.suggested ?? '…'} } }`,
    ]),
  ];
}
