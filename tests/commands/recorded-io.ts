import type { CommandIo } from '../../src/commands/command-io.ts';

/** A command's world outside in which everything printed is kept. */
export interface RecordedIo extends CommandIo {
  readonly printed: string[];
  readonly errors: string[];
}

/** A world without a terminal. */
export function recordedIo(environment: CommandIo['environment'] = {}): RecordedIo {
  const printed: string[] = [];
  const errors: string[] = [];
  return {
    environment,
    isTerminal: false,
    printed,
    errors,
    print: (line) => void printed.push(line),
    printError: (line) => void errors.push(line),
  };
}
