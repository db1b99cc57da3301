import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import { parse, stringify } from 'yaml';
import * as z from 'zod';
import { renamePatiently } from '../../content/folder-change/patient-rename.ts';
import { type KeptAnswers, NO_ANSWERS } from '../../content/papers/questions.ts';
import { liesInside } from '../lies-inside.ts';
import { UsageError } from '../read-arguments.ts';

const Texts = z.record(z.string(), z.coerce.string());
const AnswersSchema = z.strictObject({
  all: Texts.default({}),
  shapes: z.record(z.string(), Texts).default({}),
  papers: z.record(z.string(), Texts).default({}),
  anglers: z.record(z.string(), Texts).default({}),
}) satisfies z.ZodType<KeptAnswers>;

/** Where the answers of a venue are kept: beside its folder, since they say how a club's papers look, not what its water is. */
export function answerFileOf(folder: string, named: string | null): string {
  const path = resolve(named ?? `${folder.replace(/[\\/]+$/, '')}.import.yaml`);
  if (liesInside(folder, path)) {
    throw new UsageError(`Answers are kept outside the venue folder, since it is published: ${path} lies inside it.`);
  }
  return path;
}

/**
 * Reads kept answers; none where there is no file yet.
 * @throws UsageError where the file is no list of answers
 */
export function readAnswers(path: string): KeptAnswers {
  if (!existsSync(path)) return NO_ANSWERS;
  let written: unknown;
  try {
    written = parse(readFileSync(path, 'utf8'), { maxAliasCount: 0, schema: 'failsafe' }) ?? {};
  } catch (error) {
    throw new UsageError(
      `${path} cannot be read as YAML: ${error instanceof Error ? error.message.split('\n')[0] : error}`,
    );
  }
  const read = AnswersSchema.safeParse(written);
  if (read.success) return read.data;
  const { path: place, message } = read.error.issues[0]!;
  throw new UsageError(
    `${path}: unexpected ${place.length === 0 ? 'content' : `"${place.join('.')}"`} (${message}), expected all, shapes, papers and anglers, each with questions and answers.`,
  );
}

const HEAD = `# What was answered when papers were imported; the next import of such a paper asks no more.
# "all" holds for every paper, "shapes" for papers with the same headings, "papers" for one file, "anglers" for one person
# (by digest: no name stands here). Change or delete a line to be asked again.
`;

/** Keeps answers, the file as a whole or not at all. One that says so already is left as a person wrote it. */
export function writeAnswers(path: string, answers: KeptAnswers): void {
  if (existsSync(path) && isDeepStrictEqual(readAnswers(path), answers)) return;
  const aside = join(dirname(path), `.${process.pid}.import.yaml`);
  writeFileSync(aside, `${HEAD}${stringify(answers)}`);
  renamePatiently(aside, path);
}
