import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.json': 'application/json',
  '.geojson': 'application/geo+json',
  '.svg': 'image/svg+xml',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.avif': 'image/avif',
};

/** What the host does to the answer for a path, instead of sending its file. */
export interface Tampering {
  readonly status?: number;
  /** The answer is held until this is settled, so that no test hangs on how fast a machine is. */
  readonly until?: Promise<void>;
  readonly headers?: Readonly<Record<string, string>>;
  /** The folder of another edition, whose file is sent. */
  readonly folder?: string;
}

/** A host of plain files that can be made to misbehave, and notes what it was asked for and how much it sent. */
export class TamperedHost {
  readonly #server: Server;
  folder: string;
  tamper: (path: string) => Tampering = () => ({});
  asked: { readonly path: string; readonly bytes: number }[] = [];

  private constructor(folder: string) {
    this.folder = folder;
    this.#server = createServer(async (request, response) => {
      const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
      const { status, until, headers = {}, folder: other = this.folder } = this.tamper(path);
      await until;
      const file = join(other, path.endsWith('/') ? `${path}index.html` : path);
      const isThere = existsSync(file) && !statSync(file).isDirectory();
      if (status !== undefined || !isThere) {
        this.asked.push({ path, bytes: 0 });
        response.writeHead(status ?? 404, { 'content-type': 'text/html' });
        return response.end(`<!doctype html><title>${status ?? 404}</title><h1>The host says ${status ?? 404}</h1>`);
      }
      const bytes = readFileSync(file);
      this.asked.push({ path, bytes: bytes.length });
      response.writeHead(200, { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream', ...headers });
      return response.end(bytes);
    });
  }

  /** Serves a folder on a free port. */
  static async of(folder: string): Promise<TamperedHost> {
    const host = new TamperedHost(folder);
    await new Promise<void>((resolve) => host.#server.listen(0, '127.0.0.1', resolve));
    return host;
  }

  /** With a slash at its end. */
  get address(): string {
    return `http://localhost:${(this.#server.address() as AddressInfo).port}/`;
  }

  close(): void {
    this.#server.close();
    this.#server.closeAllConnections();
  }
}
