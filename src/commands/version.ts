import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { NEWEST_FORMAT } from '../content/folder-format.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { jsonText } from './json-text.ts';
import { PACKAGE_FOLDER } from './package-folder.ts';
import { readArguments } from './read-arguments.ts';

/** `version [--json]`: the program's version, the newest format of the folder it reads, and the Node it runs on. */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, { json: { type: 'boolean' }, venue: { type: 'string' } });
  const version = programVersion();
  if (values.json === true) io.print(jsonText({ version, format: NEWEST_FORMAT, node: process.version }));
  else
    io.print(`Peg Atlas ${version}, venue folders up to format ${NEWEST_FORMAT}, on Node ${process.version.slice(1)}`);
  return EXIT.clean;
}

/** The program's version, as its package says it. */
export function programVersion(): string {
  const { version } = JSON.parse(readFileSync(join(PACKAGE_FOLDER, 'package.json'), 'utf8')) as { version: string };
  return version;
}
