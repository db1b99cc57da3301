import { type ParseArgsConfig, type ParseArgsOptionsConfig, parseArgs } from 'node:util';

/** Words a command could not make sense of, with the sentence for the person who typed them. */
export class UsageError extends Error {}

/**
 * Reads a command's arguments strictly.
 * @throws UsageError with a plain sentence on an unknown or incomplete option.
 */
export function readArguments<T extends ParseArgsOptionsConfig>(
  args: readonly string[],
  options: T,
  allowPositionals = false,
) {
  try {
    return parseArgs({
      args: [...args],
      options,
      allowPositionals,
      strict: true,
    } satisfies ParseArgsConfig);
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
