import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { guideServer } from '../../../src/commands/guide-folder/serve-guide.ts';

let scratch: string;
let server: Server;

beforeAll(async () => {
  scratch = realpathSync(mkdtempSync(join(tmpdir(), 'serve-')));
  const out = join(scratch, 'dist');
  mkdirSync(join(out, 'kiln-pool/23'), { recursive: true });
  writeFileSync(join(scratch, 'secret.txt'), 'secret');
  writeFileSync(join(out, 'index.html'), 'home');
  writeFileSync(join(out, '404.html'), 'no such page');
  writeFileSync(join(out, 'kiln-pool/23/index.html'), 'peg 23');
  writeFileSync(join(out, 'feed.xml'), '<feed/>');
  symlinkSync(join(scratch, 'secret.txt'), join(out, 'linked.txt'));
  symlinkSync(scratch, join(out, 'away'));
  server = guideServer(out, '/guide/');
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
});

afterAll(() => {
  server.close();
  rmSync(scratch, { recursive: true });
});

/** Asked as it is written: `fetch` would tidy the path first. */
function get(path: string, method = 'GET'): Promise<{ status: number; type: string; text: string; location: string }> {
  const { port } = server.address() as AddressInfo;
  return new Promise((resolve, reject) => {
    const asked = request({ host: '127.0.0.1', port, path, method }, (answer) => {
      let text = '';
      answer.on('data', (chunk: Buffer) => {
        text += chunk.toString();
      });
      answer.on('end', () => {
        const { 'content-type': type = '', location = '' } = answer.headers;
        resolve({ status: answer.statusCode ?? 0, type, text, location });
      });
    });
    asked.on('error', reject).end();
  });
}

test('serves pages by their folder, files by their name and the rest as not found', async () => {
  expect(await get('/guide/')).toMatchObject({ status: 200, text: 'home', type: 'text/html; charset=utf-8' });
  expect(await get('/guide/kiln-pool/23/?day=1')).toMatchObject({ status: 200, text: 'peg 23' });
  expect(await get('/guide/kiln-pool/23')).toMatchObject({ status: 308, location: '/guide/kiln-pool/23/' });
  expect(await get('/guide/feed.xml')).toMatchObject({ status: 200, type: 'application/atom+xml; charset=utf-8' });
  expect(await get('/guide/', 'HEAD')).toMatchObject({ status: 200, text: '' });
  expect(await get('/guide/', 'POST')).toMatchObject({ status: 405 });
  expect(await get('/guide/kiln-pool/24/')).toMatchObject({ status: 404, text: 'no such page' });
});

test.each([
  '/guide/linked.txt',
  '/guide/away/secret.txt',
  '/guide/../secret.txt',
  '/guide/%2e%2e/secret.txt',
  '/guide/..%2fsecret.txt',
  '/guide/%2e%2e%2fsecret.txt',
  '/guide/..%5csecret.txt',
  '/guide/kiln-pool/..%2f..%2f..%2fsecret.txt',
  '//x/%2f..',
  '//secret.txt',
  '/guide//etc/passwd',
  '/guide/%00',
  '/guide/%',
  '/guide/%ff',
  '/guide/%c0%ae%c0%ae/secret.txt',
  '/secret.txt',
  '/',
  '/guidebook/',
])('%s is no page of the guide', async (path) => {
  const answer = await get(path);
  expect(answer.status).toBe(404);
  expect(answer.text).not.toContain('secret');
});
