import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { build } from 'esbuild';
import type { NowFacts } from '../atlas/now-facts.ts';
import { PAGE_MARK_PLACE } from '../atlas/page-mark.ts';
import { checkedText, type FileSet, LIST_PATH, type ListedFile, NOW_PATH } from '../client/offline/offline-list.ts';
import type { SignedNow } from '../client/offline/read-now-file.ts';
import { withDay } from '../client/offline/with-day.ts';
import type { Day } from '../domain/day.ts';
import type { NowFile } from '../domain/now-file.ts';
import { HOST_FILES } from './guide-folder/host-files.ts';
import { PACKAGE_FOLDER } from './package-folder.ts';
import { NOTICES_PATH } from './third-party-notices.ts';

const WORKER = join(PACKAGE_FOLDER, 'src', 'client', 'service-worker.ts');
const SCRIPT = 'service-worker.js';
/** Written here, or read by hosts and by who asks whose work a guide holds: no phone keeps them. */
const NOT_LISTED = new Set<string>([LIST_PATH, SCRIPT, NOW_PATH, NOTICES_PATH, ...HOST_FILES]);
/** Read by the command that prints the booklet: no phone keeps it. */
const BOOKLET_PATH = 'paper/booklet/index.html';
/** What changed since earlier editions is no part of an edition. */
const CHANGES_FOLDER = 'changes/';
const PICTURES = /\.(?:jpe?g|png|webp|avif|gif)$/i;
const FEEDS = /\.(?:xml|ics|csv)$/;
/** What no visitor reads is fetched by who uses it, a folder at a time. */
const FOR_OTHERS = new Set(['bank-round', 'data', 'due', 'matches', 'paper', 'register', 'schema', 'workings']);
/** Of two guides that differ in nothing but their day, a page carries the same mark. */
const DAY_OF_MARKS: Day = '2000-01-01';
const MARK_OF_PAGE = /<body[^>]* data-mark="([^"]+)"/;
const SHEET = /^(?!compare\/|features\/)[^/]+\/[^/]+\/$/;
const MAP_DATA = /^data\/waters\/([^/]+)\.geojson$/;

/**
 * Writes what makes a built guide readable offline into its folder: the marks of its pages; `now.json`, completed with
 * them, the edition and a digest; `offline-list.json`, every file with the digest of its bytes, in the order in which a
 * phone fetches them; and `service-worker.js`.
 * @param distDir the built guide
 * @param base the path it will be served below, with a slash at each end
 * @param script the service worker's, where it was begun before
 */
export async function writeOfflineList(distDir: string, base: string, script = workerScript(base)): Promise<void> {
  const facts = readFacts(join(distDir, NOW_PATH));
  const paths = filesBelow(distDir).filter((path) => !NOT_LISTED.has(path) && !path.startsWith(CHANGES_FOLDER));
  const marks: Record<string, string> = {};
  const files: ListedFile[] = [];
  const waters = new Set(paths.map((path) => MAP_DATA.exec(path)?.[1]).filter((water) => water !== undefined));
  for (const path of paths) {
    const address = addressOf(path);
    // One file after another as quickly as the disk gives them: nothing else is at work any more.
    const { bytes, mark } = path.endsWith('.html')
      ? markPage(join(distDir, path), facts.day)
      : plainFile(distDir, path);
    if (mark !== null) marks[address] = mark;
    if (path !== BOOKLET_PATH) files.push([address, shortDigest(bytes), setOf(path, waters)]);
  }
  const { day, pegs, notices } = facts;
  const edition = shortDigest(JSON.stringify([base, day, pegs, notices, files]));
  const now: NowFile = { edition, day, pegs, notices, marks };
  const signedNow = JSON.stringify({ check: shortDigest(JSON.stringify(now)), now });
  writeFileSync(join(distDir, NOW_PATH), signedNow);
  files.push([NOW_PATH, shortDigest(signedNow), 'first']);
  const list = { edition, day, files: files.sort((a, b) => rankOf(a) - rankOf(b)) };
  writeFileSync(join(distDir, LIST_PATH), JSON.stringify({ ...list, check: shortDigest(checkedText(list)) }));
  writeFileSync(join(distDir, SCRIPT), await script);
}

/** What the pages' build wrote, or what this made of it when the folder was listed before. */
function readFacts(file: string): NowFacts {
  const written = JSON.parse(readFileSync(file, 'utf8')) as NowFacts | SignedNow;
  return 'now' in written ? written.now : written;
}

function filesBelow(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .sort();
}

interface GuideFile {
  readonly bytes: Uint8Array | string;
  /** Of a page. */
  readonly mark: string | null;
}

function plainFile(distDir: string, path: string): GuideFile {
  return { bytes: readFileSync(join(distDir, path)), mark: null };
}

/** Gives a page its mark, the digest of what it holds besides the day. */
function markPage(file: string, day: Day): GuideFile {
  const written = readFileSync(file, 'utf8');
  const html = written.replaceAll(MARK_OF_PAGE.exec(written)?.[1] ?? PAGE_MARK_PLACE, PAGE_MARK_PLACE);
  const mark = shortDigest(withDay(html, day, DAY_OF_MARKS)).slice(0, PAGE_MARK_PLACE.length);
  const marked = html.replaceAll(PAGE_MARK_PLACE, mark);
  writeFileSync(file, marked);
  return { bytes: marked, mark };
}

function setOf(path: string, waters: ReadonlySet<string>): FileSet {
  if (PICTURES.test(path)) return 'pictures';
  const [folder = '', ...rest] = path.split('/');
  if (FEEDS.test(path)) return 'feeds';
  if (MAP_DATA.test(path) || path === 'data/where.json') return 'first';
  if (FOR_OTHERS.has(folder)) return folder;
  const isOfWater = waters.has(folder) && rest.length > 1;
  return isOfWater || ['compare', 'features', 'rules', 'search'].includes(folder) ? 'guide' : 'first';
}

/** What closes a peg before anything else, then the first page and what every page loads, then the pegs' sheets. */
function rankOf([path, , set]: ListedFile): number {
  if (path === NOW_PATH) return 0;
  if (path === '') return 1;
  if (set === 'guide') return SHEET.test(path) ? 3 : 4;
  return set === 'first' ? 2 : 5;
}

/** A page's address is its folder. */
function addressOf(path: string): string {
  return path
    .replace(/(^|\/)index\.html$/, '$1')
    .split('/')
    .map(encodeURIComponent)
    .join('/');
}

/** The script that keeps a guide on a phone. It asks for nothing of the guide, and can be begun before there is one. */
export async function workerScript(base: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [WORKER],
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    // The settings of a package's own tsconfig are passed over where it is installed: none, so that both write the same bytes.
    tsconfigRaw: {},
    banner: { js: `const OFFLINE = ${JSON.stringify({ base })};` },
  });
  return outputFiles[0]?.text ?? '';
}

function shortDigest(content: Uint8Array | string): string {
  return createHash('sha256').update(content).digest('hex').slice(0, 16);
}
