import { existsSync, readFileSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { gzipSync } from 'node:zlib';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.webp': 'image/webp',
};
/** What is packed already is sent as it is. */
const COMPRESSED = new Set(['.html', '.css', '.js', '.json', '.svg', '.csv', '.xml']);

/** Serves a built guide as a club's host does: every text compressed. For measuring only. */
export function compressingServer(folder: string): Server {
  const packed = new Map<string, Buffer>();
  return createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname));
    let file = join(folder, path);
    if (existsSync(file) && statSync(file).isDirectory()) file = join(file, 'index.html');
    if (!existsSync(file)) {
      response.writeHead(404).end();
      return;
    }
    const type = extname(file);
    const isPacked = COMPRESSED.has(type);
    const body = packed.get(file) ?? (isPacked ? gzipSync(readFileSync(file), { level: 9 }) : readFileSync(file));
    packed.set(file, body);
    response.writeHead(200, {
      'content-type': TYPES[type] ?? 'application/octet-stream',
      'content-length': body.length,
      ...(isPacked ? { 'content-encoding': 'gzip' } : {}),
    });
    response.end(body);
  });
}
