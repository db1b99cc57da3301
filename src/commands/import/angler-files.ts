import { createHmac, randomBytes } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { formatRegister, keyedDigest, type RegisterRow, readRegister } from '../../content/anglers/register.ts';
import { sharedRegisterName } from '../../content/association/load-association.ts';
import { renamePatiently } from '../../content/folder-change/patient-rename.ts';
import type { CommandIo } from '../command-io.ts';
import { liesInside } from '../lies-inside.ts';
import { UsageError } from '../read-arguments.ts';

/** The club's key and its register of anglers, both outside the venue folder and readable by their owner alone. */
export interface AnglerFiles {
  readonly key: Uint8Array;
  readonly rows: readonly RegisterRow[];
  readonly keyPath: string;
  readonly registerPath: string;
  /** Whether the key was made just now. */
  readonly isNew: boolean;
}

const KEY_BYTES = 32;

/**
 * Opens the key and register of a club; makes a key where there is none yet.
 * @param club the club's name; its letters name the files
 * @throws UsageError where they would lie inside the venue folder, or one of them is damaged
 */
export function openAnglerFiles(
  folder: string,
  club: string,
  named: string | null,
  environment: CommandIo['environment'],
): AnglerFiles {
  const { home, stem } = anglerPlace(folder, club, named, environment);
  if (liesInside(folder, home)) {
    throw new UsageError(
      `The key of the anglers' register may not lie inside the venue folder, since that is published: ${home}`,
    );
  }
  const keyPath = join(home, `${stem}.key`);
  const registerPath = join(home, `${stem}.anglers.csv`);
  const hasRegister = existsSync(registerPath);
  const isNew = !existsSync(keyPath);
  if (isNew && hasRegister) {
    throw new UsageError(
      `${registerPath} is there and its key ${keyPath} is not: put the key back from the club's safe. A new key would make everybody a new angler.`,
    );
  }
  if (isNew) {
    mkdirSync(home, { recursive: true, mode: 0o700 });
    writeFileSync(keyPath, `${randomBytes(KEY_BYTES).toString('hex')}\n`, { mode: 0o600, flag: 'wx' });
  }
  const key = Buffer.from(readFileSync(keyPath, 'utf8').trim(), 'hex');
  if (key.length !== KEY_BYTES) throw new UsageError(`${keyPath} holds no key: expected 64 hexadecimal digits.`);
  const read = hasRegister ? readRegister(readFileSync(registerPath, 'utf8')) : { ok: true as const, rows: [] };
  if (!read.ok)
    throw new UsageError(
      `${registerPath}:${read.line}: this line is none of the register's. Put the file back from a copy.`,
    );
  return { key, rows: read.rows, keyPath, registerPath, isNew };
}

/** The folder of a club's key and register, and the name of both files: an association's own, where its venues share anglers. */
function anglerPlace(folder: string, club: string, named: string | null, environment: CommandIo['environment']) {
  const settings = environment.XDG_CONFIG_HOME || join(environment.HOME || homedir(), '.config');
  const home = resolve(named ?? (environment.PEG_ATLAS_KEYS || join(settings, 'peg-atlas')));
  const stem =
    (sharedRegisterName(folder) ?? club)
      .normalize('NFKD')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'club';
  return { home, stem };
}

/** Whether a whole name, as compared, is one the club's register knows. Makes no key: without one, nobody is known. */
export function knownAnglers(
  folder: string,
  club: string,
  named: string | null,
  environment: CommandIo['environment'],
): (fullName: string) => boolean {
  const { home, stem } = anglerPlace(folder, club, named, environment);
  const paths = [join(home, `${stem}.key`), join(home, `${stem}.anglers.csv`)] as const;
  if (!paths.every((path) => existsSync(path))) return () => false;
  const key = Buffer.from(readFileSync(paths[0], 'utf8').trim(), 'hex');
  const read = readRegister(readFileSync(paths[1], 'utf8'));
  const known = new Set(read.ok ? read.rows.map(({ full }) => full) : []);
  return (fullName) => known.has(keyedDigest(key, 'full', fullName));
}

/** Keeps the register, as a whole or not at all. */
export function writeRegister({ registerPath }: AnglerFiles, rows: readonly RegisterRow[]): void {
  const aside = join(dirname(registerPath), `.${process.pid}.anglers`);
  writeFileSync(aside, formatRegister(rows), { mode: 0o600 });
  chmodSync(aside, 0o600);
  renamePatiently(aside, registerPath);
}

/** Random bytes that are the same for the same text within one run: questions may make a reader begin again. */
export function drawOfRun(): (salt: string) => Uint8Array {
  const secret = randomBytes(KEY_BYTES);
  return (salt) => createHmac('sha256', secret).update(salt).digest().subarray(0, 8);
}
