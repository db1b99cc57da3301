import type { Units } from '../domain/bag.ts';
import { formatLength } from '../domain/length.ts';
import type { PegSurvey } from '../ground/survey.ts';
import type { Say } from '../words/say.ts';
import { noDepthWords } from './depth-words.ts';

/** The lines of the trade asked for most, by their id; all but the margin are called by their length. */
const ASKED_LINES: readonly (readonly [id: string, metres: string])[] = [
  ['margin', ''],
  ['top-kit-2', '5 m'],
  ['pole-11', '11 m'],
  ['pole-13', '13 m'],
];

/** Those of a peg's rows that stand at the lines asked for most, each with what it is called: `margin`, `11 m`. */
export function atAskedLines<T extends { readonly id: string }>(
  rows: readonly T[],
  say: Say,
): readonly { readonly name: string; readonly row: T }[] {
  return ASKED_LINES.flatMap(([id, metres]) => {
    const row = rows.find((each) => each.id === id);
    return row === undefined ? [] : [{ name: id === 'margin' ? say('answer.margin') : metres, row }];
  });
}

/**
 * The depths of a peg at those lines in words: `2.05 m`, `not plumbed`, `not allowed`.
 * @param levelMetres of the water's surface above its datum
 */
export function askedDepths(
  { lineDepths }: Pick<PegSurvey, 'lineDepths'>,
  units: Units,
  levelMetres: number,
  say: Say,
): readonly { readonly name: string; readonly words: string }[] {
  return atAskedLines(lineDepths, say).map(({ name, row: { depthMetres, permitted, why } }) => {
    if (!permitted) return { name, words: say('answer.notAllowed') };
    if (depthMetres === null) return { name, words: noDepthWords(why, say) };
    return { name, words: formatLength(Math.max(0, depthMetres + levelMetres), units) };
  });
}
