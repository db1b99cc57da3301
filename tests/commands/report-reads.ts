import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { relative, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Preloaded into a command under test: writes a line for each file below `READS_OF` that is opened, into the file `READS_REPORT`. */
const folder = resolve(process.env.READS_OF ?? '');
const report = process.env.READS_REPORT ?? 'reads.txt';
const append = fs.appendFileSync;
/** Some ways to read a file open it by another way that is watched too: that is one opening. */
let isWithin = false;

function note(path: unknown): void {
  if (typeof path !== 'string' && !(path instanceof URL) && !Buffer.isBuffer(path)) return;
  const inside = relative(folder, path instanceof URL ? fileURLToPath(path) : path.toString());
  if (!inside.startsWith('..') && inside !== '') append(report, `${inside.split(sep).join('/')}\n`);
}

/** Every way of Node to open a file by its path. A read by an open file's number was noted as it was opened. */
function watch(room: object, names: readonly string[]): void {
  const methods = room as Record<string, (...args: unknown[]) => unknown>;
  for (const name of names) {
    const plain = methods[name]!;
    methods[name] = (...args) => {
      if (isWithin) return plain.apply(room, args);
      isWithin = true;
      try {
        note(args[0]);
        return plain.apply(room, args);
      } finally {
        isWithin = false;
      }
    };
  }
}

watch(fs, ['readFile', 'readFileSync', 'open', 'openSync', 'createReadStream', 'copyFile', 'copyFileSync']);
watch(fs.promises, ['readFile', 'open', 'copyFile']);
syncBuiltinESMExports();
