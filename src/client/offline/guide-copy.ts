import type { NowFile } from '../../domain/now-file.ts';
import { shortDigest } from './digest.ts';
import { KeptRecords, type ListName } from './kept-records.ts';
import { digestsByPath, LIST_PATH, NOW_PATH, type OfflineList, readOfflineList, VISITORS } from './offline-list.ts';
import { readNowFile } from './read-now-file.ts';
import { type PageState, standingLines } from './standing.ts';
import { pageMarks, withoutPage, withStanding } from './standing-html.ts';
import { type Answer, inTime, type Surroundings } from './surroundings.ts';
import { missingFiles, progress, type TakeUp, takeUp } from './take-up.ts';

/** How long a reader waits for the network before the kept copy is shown: at the water a signal comes and goes. */
const PATIENCE_MILLISECONDS = 2500;

/** A page and its script ask within moments of each other: one answer serves both. */
const CHECK_HOLDS_MILLISECONDS = 10_000;

/** Pictures that stay on a phone once they were seen (our own choice: some ten megabytes). */
const PICTURES_KEPT = 200;

/** A page as it is to be shown. */
export interface ShownPage {
  readonly status: number;
  readonly html: string;
}

/** A page in hand and the edition it is known to be of. */
interface FoundPage {
  readonly bytes: Uint8Array;
  readonly list: OfflineList | null;
}

/**
 * The phone's copy of one guide: what is asked of the host, what is kept, and what is shown. Plain logic over its
 * surroundings; the service worker gives it the browser's.
 */
export class GuideCopy {
  readonly #world: Surroundings;
  readonly #base: string;
  readonly #records: KeptRecords;
  #takingUp: Promise<TakeUp> | null = null;
  #isStale = false;
  /** The last take-up ended for want of room. */
  #isFull = false;
  /** Of the last check, if it succeeded; in milliseconds since 1970. */
  #checkedAt = Number.NEGATIVE_INFINITY;

  /** @param base the path the guide stands below, with a slash at each end */
  constructor(world: Surroundings, base: string) {
    this.#world = world;
    this.#base = base;
    this.#records = new KeptRecords(world.store, () => world.tell());
  }

  /** Takes up the latest guide; a second call while one runs makes it look for a still later one when it is done. */
  takeUp(): Promise<TakeUp> {
    if (this.#takingUp !== null) {
      this.#isStale = true;
      return this.#takingUp;
    }
    this.#takingUp = takeUp(this.#world, this.#records)
      .then((end) => {
        this.#isFull = end.outcome === 'no-room';
        return end;
      })
      .finally(() => {
        this.#takingUp = null;
      });
    return this.#takingUp;
  }

  /**
   * Takes up what is new, where the host has told of an edition that is not kept, or a set is wanted that is not here.
   * @param path the page that asks: at a first visit it was there before the worker, and nobody noted that it is in use
   */
  async catchUp(path: string | null = null): Promise<void> {
    await this.#catchUpWanted();
    if (path !== null && (await this.use(path).catch(() => false))) await this.#catchUpWanted();
  }

  async #catchUpWanted(): Promise<void> {
    do {
      this.#isStale = false;
      const check = await this.#records.lastCheck();
      const whole = await this.#records.list('whole');
      if (whole !== null && check?.edition === whole.edition) {
        const { have, need } = await progress(this.#world, this.#records, whole);
        if (have === need) return;
      }
      await this.takeUp();
    } while (this.#isStale);
  }

  /** Keeps all that visitors read, though data are to be saved: the reader asked for it. */
  async keepAll(): Promise<void> {
    await this.#records.want(VISITORS).catch(() => undefined);
    await this.catchUp();
  }

  /** Asks which edition is published and takes in what it closes. Null where no now file that holds together came. */
  async check(): Promise<NowFile | null> {
    const answer = await this.#world.ask(NOW_PATH, 'everything');
    const now = answer?.status === 200 ? await readNowFile(answer.bytes) : null;
    this.#checkedAt = now === null ? Number.NEGATIVE_INFINITY : this.#world.time();
    if (now === null) return null;
    await this.#records.see(now);
    await this.#records.writeLastCheck({ edition: now.edition, time: this.#world.time() });
    return now;
  }

  /** Whether the host told of the published edition: just now, or when asked again. */
  async isChecked(): Promise<boolean> {
    return this.#world.time() - this.#checkedAt < CHECK_HOLDS_MILLISECONDS || (await this.check()) !== null;
  }

  /**
   * The page to show for an address: the kept one where the host says that its edition is the published one; else the
   * host's, if it comes in time and is a page of this guide; else the kept one, which says that it is older or unchecked.
   * Null where neither is there.
   */
  async page(path: string): Promise<ShownPage | null> {
    const deadline = this.#world.wait(PATIENCE_MILLISECONDS).then(() => null);
    const now = await Promise.race([this.check().catch(() => null), deadline]);
    const kept = await this.#keptPage(path);
    const isOfNow = now !== null && kept?.list?.edition === now.edition;
    const asked = isOfNow ? null : this.#askedPage(path, now, kept);
    const fresh = asked === null ? null : await (kept === null ? asked : Promise.race([asked, deadline]));
    const found = fresh?.page ?? kept;
    if (found !== null) return { status: 200, html: await this.#shown(path, found, now) };
    if (fresh?.answer != null) return { status: fresh.answer.status, html: decoded(fresh.answer.bytes) };
    return this.#missing(path, now);
  }

  /** A script, drawing, table or picture that is kept. */
  async part(path: string): Promise<Uint8Array | null> {
    const found = await this.#kept(path);
    return found?.bytes ?? null;
  }

  /** Keeps a picture that was seen, if it is the one that a list names. */
  async keepSeen(path: string, bytes: Uint8Array): Promise<void> {
    const digest = await shortDigest(bytes);
    for (const name of ['latest', 'whole'] as const) {
      const list = await this.#records.list(name);
      if (digestsByPath(list).get(path) !== digest) continue;
      await this.#records.keepFile(digest, bytes).catch(() => false);
      await this.#dropPictures(list);
    }
  }

  /** A phone is no album: of the pictures seen the latest stay. */
  async #dropPictures(list: OfflineList | null): Promise<void> {
    const pictures = new Set(list?.files.flatMap(([, digest, set]) => (set === 'pictures' ? [digest] : [])));
    const seen = [...(await this.#records.keptDigests())].filter((digest) => pictures.has(digest));
    for (const digest of seen.slice(0, -PICTURES_KEPT)) await this.#records.dropFile(digest);
  }

  /** Notes that a page was used whose files are kept only for who uses them. True where that is new. */
  async use(path: string): Promise<boolean> {
    const list = (await this.#records.list('latest')) ?? (await this.#records.list('whole'));
    const set = list?.files.find(([each]) => each === path)?.[2];
    return set !== undefined && !['first', 'guide', 'pictures'].includes(set) && this.#records.want(set);
  }

  /** What a page that is open should know: as `page` would say it now. `page` is the edition it was shown as. */
  async state(path: string, pageEdition: string | null, isChecked: boolean): Promise<PageState> {
    const lists = await Promise.all((['whole', 'latest', 'before'] as const).map((name) => this.#records.list(name)));
    const list = lists.find((each) => each?.edition === pageEdition) ?? null;
    return this.#stateOf(path, list, isChecked);
  }

  async #stateOf(path: string, list: OfflineList | null, isChecked: boolean): Promise<PageState> {
    const whole = await this.#records.list('whole');
    return {
      path,
      page: list === null ? null : { edition: list.edition, day: list.day },
      isChecked,
      lastCheck: (await this.#records.lastCheck())?.time ?? null,
      seen: await this.#records.seen(),
      own: await this.#nowOf(list),
      part: await this.#part(),
      whole: whole && {
        edition: whole.edition,
        day: whole.day,
        missing: missingFiles(whole, await this.#records.keptDigests()),
      },
    };
  }

  async #shown(path: string, { bytes, list }: FoundPage, now: NowFile | null): Promise<string> {
    const state = await this.#stateOf(path, list, now !== null);
    const marked = decoded(bytes).replace('<body', () => `<body data-copy="${list?.edition ?? ''}"`);
    return withStanding(marked, standingLines(state, this.#world.today()));
  }

  /** The guide's page for an address that is not there: none of the guide, or none that this phone has yet. */
  async #missing(path: string, now: NowFile | null): Promise<ShownPage | null> {
    const page = await this.#keptPage('404.html');
    if (page === null) return null;
    const html = await this.#shown('404.html', page, now);
    const lists = await Promise.all((['whole', 'latest'] as const).map((name) => this.#records.list(name)));
    const isListed = lists.some((list) => digestsByPath(list).has(path));
    return isListed ? { status: 503, html: withoutPage(html) } : { status: 404, html };
  }

  /** The host's page, where it is one of this guide, and the edition its bytes belong to. */
  async #askedPage(path: string, now: NowFile | null, kept: FoundPage | null): Promise<AskedPage> {
    const [answer, published] = await Promise.all([this.#world.ask(path, 'browser'), this.#publishedList(now)]);
    const page = answer?.status === 200 ? await this.#hostPage(path, answer.bytes, published, kept) : null;
    return { answer, page };
  }

  async #hostPage(
    path: string,
    bytes: Uint8Array,
    published: OfflineList | null,
    kept: FoundPage | null,
  ): Promise<FoundPage | null> {
    const marks = pageMarks(decoded(bytes));
    // A host's own page, or another guide's: neither stands in for a page that is kept.
    if (marks?.base !== this.#base) return null;
    const digest = await shortDigest(bytes);
    const lists = [published, await this.#records.list('latest'), await this.#records.list('whole')];
    const list = lists.find((each) => each !== null && digestsByPath(each).get(path) === digest) ?? null;
    if (list !== null) {
      await this.#records.keepFile(digest, bytes).catch(() => false);
      return { bytes, list };
    }
    const isBehind = kept?.list != null && marks.day < kept.list.day;
    return isBehind ? null : { bytes, list: null };
  }

  /** The list of the edition that the host tells of, from the phone if it is there. */
  async #publishedList(now: NowFile | null): Promise<OfflineList | null> {
    if (now === null) return null;
    for (const name of ['whole', 'latest'] as const) {
      const list = await this.#records.list(name);
      if (list?.edition === now.edition) return list;
    }
    const answer = await inTime(this.#world.ask(LIST_PATH, 'everything'), this.#world, PATIENCE_MILLISECONDS);
    return answer?.status === 200 ? readOfflineList(answer.bytes) : null;
  }

  async #keptPage(path: string): Promise<FoundPage | null> {
    return (await this.#kept(path)) ?? (path.endsWith('/') || path === '' ? null : this.#kept(`${path}/`));
  }

  /** From the guide that is whole; before there is one, from as much as has come of the first. */
  async #kept(path: string): Promise<FoundPage | null> {
    const names: readonly ListName[] = ['whole', 'before', 'latest'];
    for (const name of names) {
      const list = await this.#records.list(name);
      const bytes = await this.#records.file(digestsByPath(list).get(path));
      if (list !== null && bytes !== undefined) return { bytes, list };
    }
    return null;
  }

  async #nowOf(list: OfflineList | null): Promise<NowFile | null> {
    const bytes = await this.#records.file(digestsByPath(list).get(NOW_PATH));
    return bytes === undefined ? null : readNowFile(bytes);
  }

  async #part(): Promise<PageState['part']> {
    if ((await this.#records.list('whole')) !== null) return null;
    const latest = await this.#records.list('latest');
    if (latest === null) return null;
    return { ...(await progress(this.#world, this.#records, latest)), isFull: this.#isFull };
  }
}

/** What the host answered, and the page of this guide in it, if it is one. */
interface AskedPage {
  readonly answer: Answer | null;
  readonly page: FoundPage | null;
}

function decoded(bytes: Uint8Array): string {
  return new TextDecoder().decode(bytes);
}
