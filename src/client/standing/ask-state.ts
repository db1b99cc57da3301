import type { NowFile } from '../../domain/now-file.ts';
import { readNowFile } from '../offline/read-now-file.ts';
import type { PageState } from '../offline/standing.ts';

/** What a page says of itself. */
export interface OpenPage {
  readonly base: string;
  /** Below the base. */
  readonly path: string;
  readonly day: string;
  /** Digest of what it holds besides its day. */
  readonly mark: string;
  /** The edition the worker showed it as: empty where its bytes were of none, undefined where no worker showed it. */
  readonly copy: string | undefined;
}

/** Asks how the page stands: the worker, where one serves it, else the host. Null where neither tells. */
export async function askState(page: OpenPage): Promise<PageState | null> {
  try {
    if (navigator.serviceWorker?.controller) {
      const asked = new URLSearchParams({ path: page.path, page: await copyOf(page) });
      const answer = await fetch(`${page.base}standing.json?${asked}`);
      if (answer.ok) return (await answer.json()) as PageState;
    }
    const answer = await fetch(`${page.base}now.json?at=${Date.now()}`, { cache: 'no-store' });
    const now = answer.ok ? await readNowFile(new Uint8Array(await answer.arrayBuffer())) : null;
    return now && stateByMark(page, now);
  } catch {
    return null;
  }
}

/** A page that came before there was a worker: of the published edition where it carries that edition's mark. */
async function copyOf({ base, copy, path, day, mark }: OpenPage): Promise<string> {
  if (copy !== undefined) return copy;
  const answer = await fetch(`${base}now.json?at=${Date.now()}`, { cache: 'no-store' });
  const now = answer.ok ? await readNowFile(new Uint8Array(await answer.arrayBuffer())) : null;
  return now !== null && isOf(now, path, day, mark) ? now.edition : '';
}

/** The page that is shown at every address that has none. */
const NO_SUCH_PAGE = '404.html';

function isOf(now: NowFile, path: string, day: string, mark: string): boolean {
  return now.day === day && (now.marks[path] ?? now.marks[NO_SUCH_PAGE]) === mark;
}

/** How a page stands that no worker shows, by the now file alone. */
function stateByMark({ path, day, mark }: OpenPage, now: NowFile): PageState {
  const isOfNow = isOf(now, path, day, mark);
  return {
    path,
    page: isOfNow ? now : { edition: `page ${mark}`, day },
    isChecked: true,
    lastCheck: null,
    seen: [now],
    own: isOfNow ? now : null,
    part: null,
    whole: null,
  };
}
