import type { Choice, Conflict } from '../../content/intake/intake-choice.ts';
import { visibleLine } from '../../domain/hidden-characters.ts';
import type { CommandIo } from '../command-io.ts';

/**
 * Shows every field that both the folder and the round changed, and asks for each which is to stand.
 * @returns the choices by conflict; null where nobody can be asked, or the person would rather not choose
 */
export async function chooseConflicts(
  conflicts: readonly Conflict[],
  io: CommandIo,
): Promise<ReadonlyMap<string, Choice> | null> {
  const many = conflicts.length === 1 ? 'One field was' : `${conflicts.length} fields were`;
  io.printError(`${many} changed in the folder after the guide the round was made from:`);
  const choices = new Map<string, Choice>();
  for (const conflict of conflicts) {
    for (const line of conflictLines(conflict)) io.printError(line);
    if (io.ask === undefined) continue;
    const answer = (await io.ask('  Keep the folder’s [f], take the round’s [r], or stop [s]? ')).trim().toLowerCase();
    if (answer.startsWith('f')) choices.set(conflict.id, 'keep-folder');
    else if (answer.startsWith('r')) choices.set(conflict.id, 'take-round');
    else break;
  }
  if (choices.size === conflicts.length) return choices;
  const how = io.ask === undefined ? ' Choose with --keep-folder or --take-round.' : '';
  io.printError(`Nothing was changed.${how}`);
  return null;
}

function conflictLines({ peg, field, guide, folder, round }: Conflict): string[] {
  const words = (value: string | null): string => value ?? 'nothing';
  return [
    `${peg} ${field}`,
    `  the round's guide said  ${words(guide)}`,
    `  the folder says now     ${words(folder)}`,
    `  the round says          ${round}`,
  ].map(visibleLine);
}
