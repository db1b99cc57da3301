import { Asker, type KeptAnswers } from '../../content/papers/questions.ts';
import type { CommandIo } from '../command-io.ts';
import { jsonText } from '../json-text.ts';
import { askQuestions, openQuestionLines } from './ask-questions.ts';
import { NOTHING_CHANGED, refuse } from './ask-to-write.ts';

/**
 * Reads, asks, and reads again with the answers, until no question is open.
 * @param read one reading with the answers there are; it asks the asker
 * @returns null where questions stay open; they have been told then
 */
export async function settleQuestions<T>(
  read: (asker: Asker) => T,
  kept: KeptAnswers,
  answerPath: string,
  isJson: boolean,
  io: CommandIo,
): Promise<{ readonly reading: T; readonly answers: KeptAnswers } | null> {
  let answers = kept;
  for (;;) {
    const asker = new Asker(answers);
    const reading = read(asker);
    if (asker.open.length === 0) return { reading, answers };
    if (io.ask === undefined || isJson) {
      if (isJson) io.print(jsonText({ questions: asker.open }));
      refuse(openQuestionLines(asker, answerPath), io);
      return null;
    }
    const more = await askQuestions(asker.open, answers, io.ask, io);
    if (more === null) {
      io.printError(NOTHING_CHANGED);
      return null;
    }
    answers = more;
  }
}
