import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { jsonSchemas } from '../../../src/content/schemas/json-schemas.ts';

const PUBLISHED = new URL('../../../public/schema/', import.meta.url);

test('the published schema files are those of today: else run npm run -s venue -- schema', () => {
  const schemas = jsonSchemas();
  expect(readdirSync(PUBLISHED).sort()).toEqual([...schemas.keys()].sort());
  for (const [name, text] of schemas) expect(readFileSync(new URL(name, PUBLISHED), 'utf8')).toBe(text);
});

test('every schema says which it is, by a name of its own', () => {
  const ids = [...jsonSchemas()].map(([name, text]) => [name, JSON.parse(text).$id]);
  expect(ids).toEqual(ids.map(([name]) => [name, `urn:peg-atlas:schema:${name.replace('.json', '')}`]));
});

test('an editor lets through what a person may write: a bare number, a unit, true', () => {
  const { properties } = JSON.parse(jsonSchemas().get('peg.json') ?? '');
  expect(properties['margin-depth'].type).toEqual(['number', 'string']);
  expect(properties.platform.anyOf[0].properties['edge-protection'].type).toBe('boolean');
  expect(properties.status.enum).toEqual(['open', 'closed']);
  expect(properties.hazards.items.properties.kind.enum).toContain('overhead-line');
});
