import { createReadStream, realpathSync, statSync } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { extname, join, sep } from 'node:path';

/** Types of the files a guide holds; any other is handed over as bytes. */
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.geojson': 'application/geo+json; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.avif': 'image/avif',
  '.ico': 'image/x-icon',
  '.ics': 'text/calendar; charset=utf-8',
  '.xml': 'application/atom+xml; charset=utf-8',
  '.gpx': 'application/gpx+xml; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
};

/** Sent with every answer; what a page cannot say of itself in a `meta` element (framing) among them. */
const HEADERS: Readonly<Record<string, string>> = {
  'cache-control': 'no-cache',
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'same-origin',
  'content-security-policy': "frame-ancestors 'none'",
};

/**
 * A server of a built guide for this machine. Serves the files that lie in the folder themselves: a link to somewhere else,
 * a way out of the folder and a name that cannot be read are all no such page.
 * @param folder the built guide
 * @param base the path it was built for, with a slash at each end
 */
export function guideServer(folder: string, base: string): Server {
  const root = realpathSync(folder);
  return createServer((request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') return void end(response, 405, { allow: 'GET, HEAD' });
    const path = pathOf(request, base);
    if (path === null) return notFound(root, request, response);
    const file = fileAt(root, path);
    if (file !== null) return send(file, 200, request, response);
    const page = fileAt(root, `${path}/index.html`);
    if (page === null) return notFound(root, request, response);
    if (path === '' || path.endsWith('/')) return send(page, 200, request, response);
    // Links inside a page are meant from its folder on.
    end(response, 308, { location: `${base}${path.split('/').map(encodeURIComponent).join('/')}/` });
  });
}

/** The path below the base, decoded; null where the address is none of this guide. */
function pathOf({ url = '/' }: IncomingMessage, base: string): string | null {
  let path: string;
  try {
    path = decodeURIComponent(url.replace(/[?#].*$/s, ''));
  } catch {
    return null;
  }
  const steps = path.split('/');
  // An encoded slash or step would be another path once it is decoded.
  if (/%2f|%5c/i.test(url) || steps.includes('..') || steps.includes('.') || /[\0\\]/.test(path)) return null;
  if (!`${path}/`.startsWith(base) || path.includes('//')) return null;
  return path.slice(base.length);
}

/** A file that lies in the folder itself, null where there is none. */
function fileAt(root: string, path: string): string | null {
  const place = join(root, ...path.split('/').filter((step) => step !== ''));
  try {
    // A link anywhere on the way leads to another real place.
    return realpathSync(place) === place && (place + sep).startsWith(root + sep) && statSync(place).isFile()
      ? place
      : null;
  } catch {
    return null;
  }
}

function notFound(root: string, request: IncomingMessage, response: ServerResponse): void {
  const page = fileAt(root, '404.html');
  if (page === null) end(response, 404, {});
  else send(page, 404, request, response);
}

function send(file: string, status: number, { method }: IncomingMessage, response: ServerResponse): void {
  const headers = { 'content-type': TYPES[extname(file)] ?? 'application/octet-stream' };
  if (method === 'HEAD') {
    end(response, status, headers);
    return;
  }
  const stream = createReadStream(file);
  stream.once('open', () => response.writeHead(status, { ...HEADERS, ...headers }));
  stream.once('error', () => (response.headersSent ? response.destroy() : end(response, 404, {})));
  stream.pipe(response);
}

function end(response: ServerResponse, status: number, headers: Readonly<Record<string, string>>): void {
  response.writeHead(status, { ...HEADERS, ...headers }).end();
}
