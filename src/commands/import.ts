import { type CommandIo, EXIT } from './command-io.ts';
import { importPlaces } from './import/import-places.ts';
import { importResults } from './import/import-results.ts';
import { importRules } from './import/import-rules.ts';
import { importSoundings } from './import/import-soundings.ts';
import { readArguments, UsageError } from './read-arguments.ts';
import { venueFolder } from './venue-folder.ts';

const KINDS = { places: importPlaces, results: importResults, rules: importRules, soundings: importSoundings } as const;

/**
 * `import KIND FILE… [--answers FILE] [--keys FOLDER] [--yes] [--json] [--venue FOLDER]`: reads a club's own papers into the
 * venue folder, all or nothing. What a paper does not say is asked, and the answers are kept beside the venue folder.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values, positionals } = readArguments(
    args,
    {
      venue: { type: 'string' },
      answers: { type: 'string' },
      keys: { type: 'string' },
      yes: { type: 'boolean' },
      json: { type: 'boolean' },
    },
    true,
  );
  const [kind, ...files] = positionals;
  if (kind === undefined || !Object.hasOwn(KINDS, kind)) {
    throw new UsageError(
      `Unexpected "${kind ?? 'nothing'}" after import, expected one of: ${Object.keys(KINDS).join(', ')}.`,
    );
  }
  if (files.length === 0) throw new UsageError(`Name the file to read: import ${kind} FILE`);
  const folder = venueFolder(values.venue, io.environment);
  return KINDS[kind as keyof typeof KINDS](
    folder,
    files,
    {
      answers: values.answers ?? null,
      keys: values.keys ?? null,
      isAgreed: values.yes === true,
      isJson: values.json === true,
    },
    io,
  ).catch((error: unknown) => {
    if (!(error instanceof UsageError)) throw error;
    io.printError(error.message);
    return EXIT.faults;
  });
}
