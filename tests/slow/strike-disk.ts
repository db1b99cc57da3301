/**
 * Loaded before a command in a process of its own: strikes at one of the calls that change the disk. `STRIKE_BELOW` names the
 * folders that count, parted by colons; `STRIKE_LOG` a file for the list of calls; `STRIKE_KIND` the kind of the call to strike
 * at, `STRIKE_AT` which of its kind, and `STRIKE_WITH` how: `kill`, or the code the disk answers from that call on, such as
 * ENOSPC. A call is named by its kind and not by its place among all: what is worked out beside the pages writes when it is
 * ready, so that the order of the calls differs from run to run.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { relative } from 'node:path';
import { kindOf } from './kind-of-call.ts';

const below = (process.env.STRIKE_BELOW ?? '').split(':').filter((folder) => folder !== '');
const log = process.env.STRIKE_LOG;
const kind = process.env.STRIKE_KIND;
const at = Number(process.env.STRIKE_AT ?? 1);
const strikeWith = process.env.STRIKE_WITH ?? 'kill';
const CALLS = [
  'writeFile',
  'mkdir',
  'rename',
  'rm',
  'rmdir',
  'unlink',
  'copyFile',
  'cp',
  'open',
  'appendFile',
] as const;
/** Taking away needs no room. */
const NEEDS_NO_ROOM = /^(?:rm|rmdir|unlink|rename)/;

const append = fs.appendFileSync;
let ofKind = 0;
let isStruck = false;

function step(call: string, args: readonly unknown[]): void {
  const paths = args
    .slice(0, 2)
    .filter((each): each is string | URL => typeof each === 'string' || each instanceof URL);
  const [path] = paths.map((each) => (each instanceof URL ? each.pathname : each));
  const folder = below.find((each) => path?.startsWith(each));
  if (folder === undefined || path === undefined) return;
  if (call.startsWith('open') && !/[wa+]/.test(String(args[1] ?? 'r'))) return;
  const made = `${call} ${relative(folder, path) || '.'}`;
  if (log !== undefined) append(log, `${made}\n`);
  if (kind !== undefined && kindOf(made) === kind && ++ofKind === at) isStruck = true;
  if (!isStruck) return;
  if (strikeWith === 'kill') process.kill(process.pid, 'SIGKILL');
  if (strikeWith === 'ENOSPC' && NEEDS_NO_ROOM.test(call)) return;
  throw Object.assign(new Error(`${strikeWith}: the disk refuses, ${call} '${path}'`), { code: strikeWith, path });
}

type Call = (...args: unknown[]) => unknown;
type Calls = Record<string, Call>;

for (const name of CALLS) {
  const sync = fs as unknown as Calls;
  const real = sync[`${name}Sync`];
  if (real !== undefined) {
    sync[`${name}Sync`] = (...args) => {
      step(`${name}Sync`, args);
      return real.apply(fs, args);
    };
  }
  const promises = fs.promises as unknown as Calls;
  const later = promises[name];
  if (later !== undefined) {
    promises[name] = async (...args) => {
      step(name, args);
      return later.apply(fs.promises, args);
    };
  }
}
syncBuiltinESMExports();
