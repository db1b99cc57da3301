import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { LEAST_NODE, tooOldNode } from '../../src/commands/node-version.ts';

const { engines } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
  engines: { node: string };
};

test('is the version that the package asks for', () => {
  expect(engines.node).toBe(`>=${LEAST_NODE.join('.')}`);
});

test.each(['22.12.0', '22.19.1', '24.0.0', '100.1.0'])('Node %s will do', (version) => {
  expect(tooOldNode(version)).toBeNull();
});

test.each(['18.20.4', '20.20.2', '22.11.0'])('of Node %s it says what is needed', (version) => {
  expect(tooOldNode(version)).toContain(`needs Node 22.12 or newer, and this is Node ${version}`);
});
