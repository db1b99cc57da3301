import type { CommandIo } from './command-io.ts';

/** How a long fit tells what it works on: a line each to a person at a terminal, nothing to a pipe. */
export function progressLine(io: CommandIo): { readonly progress?: (what: string) => void } {
  return io.isTerminal ? { progress: (what) => io.printError(`Rating: ${what}`) } : {};
}
