import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { associationNotFound, associationPage } from '../../atlas/association-page.ts';
import type { Association } from '../../content/association/load-association.ts';
import { renamePatiently } from '../../content/folder-change/patient-rename.ts';
import { countWords } from '../../domain/count-words.ts';
import { parseSiteAddress, type SiteAddress } from '../../domain/site-address.ts';
import { type CommandIo, EXIT } from '../command-io.ts';
import { writeHostFiles } from '../guide-folder/host-files.ts';
import { jsonText } from '../json-text.ts';
import { outputFolder } from '../output-folder.ts';
import { PACKAGE_FOLDER } from '../package-folder.ts';
import { shownFolder } from '../print-faults.ts';
import { UsageError } from '../read-arguments.ts';
import { roundsAtOnce } from './at-once.ts';
import { buildMember } from './build-member.ts';
import { isSound, type MemberRead, memberJson, readMembers } from './read-venues.ts';

interface BuildOptions {
  readonly out: string | undefined;
  readonly address: string | undefined;
  readonly isQuiet: boolean;
  readonly isJson: boolean;
}

/** The mark of a folder of guides, by which a later build knows that it may write there. */
const MARK = 'guides.json';

/**
 * `build` of an association: a guide for each venue, several at once, and one first page that leads to them. A venue with faults
 * keeps the guide it has, the others get theirs, since a closure must not wait for another club's fault; the first page is
 * written when all are sound.
 */
export async function buildAssociation(folder: string, options: BuildOptions, io: CommandIo): Promise<number> {
  const out = guidesFolder(folder, options.out);
  const say = (line: string) => (options.isQuiet || options.isJson ? undefined : io.print(line));
  const step = (line: string) => (options.isQuiet || options.isJson ? undefined : io.printError(line));
  const read = await readMembers(folder, options.isJson, io, options.isJson || options.isQuiet);
  const { association } = read;
  const address = addressOf(association, options.address, io);
  const broken = new Map(read.members.flatMap(({ id, read: { venue } }) => (venue === null ? [[id, '']] : [])));
  if (association !== null && address !== null) {
    const sound = read.members.filter(({ read: { venue } }) => venue !== null);
    for (const [id, said] of await buildAll(sound, out, address, step, io)) broken.set(id, said);
  }
  const ok = isSound(read) && broken.size === 0 && association !== null;
  if (ok) await writeFirstPage(association, read.members, out, address);
  if (options.isJson) {
    const venues = read.members.map((member) => ({
      ...memberJson(member),
      ok: !broken.has(member.id),
      out: join(out, member.id),
    }));
    io.print(jsonText({ ok, out, faults: read.faults, venues }));
  } else tellBroken(broken, ok, out, io);
  for (const id of guidesOfNobody(out, association)) {
    io.printError(
      `${join(shownFolder(out), id)} is a guide without a venue folder, and still says what was open when it was built. Take it off the host.`,
    );
  }
  if (ok) say(`Built ${countWords(read.members.length, 'guide')} of ${association.name}.`);
  return ok ? EXIT.clean : EXIT.faults;
}

/** @throws UsageError where the folder of the guides is, holds or lies in the association, or holds something else */
function guidesFolder(folder: string, option: string | undefined): string {
  const out = outputFolder(undefined, folder, option);
  const isOurs = !existsSync(out) || existsSync(join(out, MARK)) || readdirSync(out).length === 0;
  if (isOurs) return out;
  throw new UsageError(
    `Unexpected --out ${out}, expected a folder that is new, empty or holds the guides of several venues: take away what is in it, or name another.`,
  );
}

function addressOf(association: Association | null, named: string | undefined, io: CommandIo): SiteAddress {
  const written = named ?? io.environment.SITE_ADDRESS ?? association?.address ?? '/';
  const address = parseSiteAddress(written);
  if (address.ok) return address.value;
  throw new UsageError(`Unexpected address "${written}", expected ${address.expected}. ${address.mend}`);
}

/** Builds guides, several at once. Gives what was said of those that failed. */
async function buildAll(
  members: readonly MemberRead[],
  out: string,
  address: SiteAddress,
  step: (line: string) => void,
  io: CommandIo,
): Promise<ReadonlyMap<string, string>> {
  await mkdir(out, { recursive: true });
  await writeFile(join(out, MARK), '[]\n', { flag: 'a' });
  const broken = new Map<string, string>();
  const processors = availableParallelism();
  const folders = new Map(members.map((member) => [member.id, member.folder]));
  let begun = 0;
  const rounds = roundsAtOnce(
    members.map(({ id, read }) => ({ id, sessions: read.counts.sessions })),
    processors,
  );
  for (const ids of rounds) {
    step(`Building ${begun + 1} to ${begun + ids.length} of ${members.length}: ${ids.join(', ')}.`);
    begun += ids.length;
    const threads = Math.max(1, Math.floor(processors / ids.length));
    await Promise.all(
      ids.map(async (id) => {
        const build = {
          folder: folders.get(id)!,
          out: join(out, id),
          address: `${address.site ?? ''}${address.base}${id}/`,
          threads,
        };
        const { code, said } = await buildMember(build, io.environment);
        if (code !== EXIT.clean) broken.set(id, said);
      }),
    );
  }
  return broken;
}

async function writeFirstPage(
  association: Association,
  members: readonly MemberRead[],
  out: string,
  { base }: SiteAddress,
): Promise<void> {
  const css = readFileSync(join(PACKAGE_FOLDER, 'src', 'styles', 'almanac.css'), 'utf8');
  const guides = members.flatMap(({ id, read: { venue } }) => (venue === null ? [] : [{ id, venue }]));
  const { name, markdown } = association;
  await put(join(out, 'index.html'), associationPage({ name, markdown, base, guides, css }));
  await put(join(out, '404.html'), associationNotFound({ name, base, css }));
  await put(join(out, MARK), jsonText(guides.map(({ id, venue }) => ({ id, name: venue.settings.name }))));
  await writeHostFiles(out, base);
}

/** As a whole or not at all, over what stands there. */
async function put(path: string, text: string): Promise<void> {
  await writeFile(`${path}.${process.pid}`, text);
  renamePatiently(`${path}.${process.pid}`, path);
}

function tellBroken(broken: ReadonlyMap<string, string>, ok: boolean, out: string, io: CommandIo): void {
  for (const [id, said] of broken) {
    if (said !== '') io.printError(said);
    const stands = existsSync(join(out, id, 'index.html'));
    io.printError(
      stands ? `${id}: the guide built before is untouched.` : `${id}: no guide was built, and none stands there yet.`,
    );
  }
  if (!ok) io.printError('The first page was not written anew: mend these faults and build again.');
}

function guidesOfNobody(out: string, association: Association | null): readonly string[] {
  if (association === null || !existsSync(out)) return [];
  return readdirSync(out)
    .filter((name) => !association.venues.includes(name) && !name.startsWith('.'))
    .filter((name) => statSync(join(out, name)).isDirectory() && existsSync(join(out, name, 'offline-list.json')));
}
