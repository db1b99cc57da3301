import { run as build } from './build.ts';
import { type CommandIo, EXIT } from './command-io.ts';
import { readArguments } from './read-arguments.ts';
import { run as serve } from './serve.ts';

/** `show [--venue FOLDER] [--out FOLDER] [--address ADDRESS] [--port N]`: builds the guide and serves it on this machine. */
export async function run(args: readonly string[], io: CommandIo): Promise<number> {
  const { values } = readArguments(args, {
    venue: { type: 'string' },
    out: { type: 'string' },
    address: { type: 'string' },
    port: { type: 'string' },
  });
  const given = (names: readonly (keyof typeof values)[]): readonly string[] =>
    names.flatMap((name) => (values[name] === undefined ? [] : [`--${name}`, values[name]]));
  const built = await build(given(['venue', 'out', 'address']), io);
  return built === EXIT.clean ? serve(given(['out', 'port']), io) : built;
}
