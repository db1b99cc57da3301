import { mkdir, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { editorSnippets } from '../content/schemas/editor-snippets.ts';
import { fieldTables } from '../content/schemas/field-tables.ts';
import { jsonSchemas } from '../content/schemas/json-schemas.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { PACKAGE_FOLDER } from './package-folder.ts';
import { readArguments } from './read-arguments.ts';

const PUBLISHED = join(PACKAGE_FOLDER, 'public', 'schema');
const FIELDS = join(PACKAGE_FOLDER, 'src', 'content', 'fields.md');

/**
 * `schema [--out FOLDER]`: writes the JSON Schema files by which an editor helps to write records, and beside `format.md`, or
 * into the folder named, the tables of every field; there the snippets for front matter too.
 */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, { out: { type: 'string' }, venue: { type: 'string' } });
  const folder = values.out === undefined ? PUBLISHED : resolve(values.out);
  await mkdir(folder, { recursive: true });
  const schemas = jsonSchemas();
  for (const [name, text] of schemas) await writeFile(join(folder, name), text);
  if (values.out !== undefined) await writeFile(join(folder, 'venue.code-snippets'), editorSnippets());
  const fields = values.out === undefined ? FIELDS : join(folder, 'fields.md');
  await writeFile(fields, fieldTables());
  io.print(
    `Wrote ${schemas.size} schema files into ${values.out ?? folder}, and the tables of every field into ${fields}.`,
  );
  return EXIT.clean;
}
