import type { AstroIntegration } from 'astro';
import { liesInside } from '../lies-inside.ts';
import { type Followed, FollowedFolder } from './follow-folder.ts';
import { overlayOf } from './overlay.ts';
import { RequestsAtWork } from './requests-at-work.ts';

/** Vite's server, as Astro hands it over. */
type ViteDevServer = Parameters<NonNullable<AstroIntegration['hooks']['astro:server:setup']>>[0]['server'];

/** The pages of a running server, which come anew whenever their folder is written; a fault shows over what was whole. */
export class FollowedPages {
  readonly #folder: string;
  readonly #followed: FollowedFolder;
  readonly #requests = new RequestsAtWork();
  #vite: ViteDevServer | undefined;
  #overlay: ReturnType<typeof overlayOf> | null = null;
  #isWhole = false;

  /** @param tell is told of every reading */
  constructor(folder: string, tell: (followed: Followed) => void) {
    this.#folder = folder;
    this.#followed = new FollowedFolder(folder, (what) => {
      tell(what);
      this.#show(what);
    });
  }

  /**
   * Reads the folder for the first time.
   * @returns whether there is anything to show
   */
  async read(): Promise<boolean> {
    await this.#followed.read();
    return this.#isWhole;
  }

  /** Watches the folder from a server, and shows there what comes of it. */
  attach(vite: ViteDevServer): void {
    this.#vite = vite;
    vite.middlewares.use((_request, response, next) => {
      this.#requests.begin(response);
      next();
    });
    vite.watcher.add(this.#folder);
    vite.watcher.on('all', (_event, path) => {
      if (liesInside(this.#folder, path)) this.#followed.changed();
    });
    // A page that is opened while there is a fault is told of it too.
    vite.environments.client.hot.on('vite:client:connect', () => {
      if (this.#overlay !== null) vite.environments.client.hot.send({ type: 'error', err: this.#overlay });
    });
  }

  /** Stops what is still at work. */
  stop(): void {
    this.#followed.stop();
  }

  #show(what: Followed): void {
    if (what.kind === 'faults') this.#overlay = overlayOf(this.#folder, what);
    if (what.kind === 'shown') {
      this.#overlay = null;
      this.#isWhole = true;
    }
    const vite = this.#vite;
    if (vite === undefined) return;
    if (this.#overlay !== null) vite.environments.client.hot.send({ type: 'error', err: this.#overlay });
    else this.#requests.whenIdle(() => showAnew(vite));
  }
}

/** Has the pages run anew, so that they draw from what was handed over, and the browser ask for them. */
function showAnew(vite: ViteDevServer): void {
  for (const environment of Object.values(vite.environments)) {
    environment.hot.send({ type: 'full-reload', path: '*' });
  }
}
