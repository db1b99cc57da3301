import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { editorSnippets } from '../../../src/content/schemas/editor-snippets.ts';
import type { SchemaPart } from '../../../src/content/schemas/field-list.ts';
import { jsonSchemas } from '../../../src/content/schemas/json-schemas.ts';

interface Snippet {
  readonly prefix: string;
  readonly body: readonly string[];
  readonly scope: string;
}

const SNIPPETS: Readonly<Record<string, Snippet>> = JSON.parse(editorSnippets());
const PEG = 'pegs/<water>/<peg>.md';
const pegSchema = JSON.parse(jsonSchemas().get('peg.json')!) as SchemaPart;

/** What an editor writes where the first word of each choice and the example of each field are taken. */
function asTyped({ body }: Snippet): string {
  return body
    .join('\n')
    .replaceAll(/\$\{\d+\|([^|,]*)[^|]*\|\}/g, '$1')
    .replaceAll(/\$\{\d+(?::([^}]*))?\}/g, (_, example) => example ?? '');
}

describe('snippets for front matter', () => {
  test('are there for every field of a record, and for nothing else', () => {
    const ofPegs = Object.keys(SNIPPETS).filter((name) => name.endsWith(`(${PEG})`));
    expect(ofPegs).toEqual(Object.keys(pegSchema.properties!).map((key) => `${key} (${PEG})`));
    expect(new Set(Object.values(SNIPPETS).map(({ scope }) => scope))).toEqual(new Set(['markdown']));
  });

  test.each(Object.entries(SNIPPETS))('%s writes a field of front matter', (_, snippet) => {
    const written = parse(asTyped(snippet));
    expect(Object.keys(written)).toEqual([snippet.prefix]);
  });

  test('offer the words a field takes, and examples that the schema lets through', () => {
    expect(SNIPPETS[`status (${PEG})`]!.body).toEqual([`status: ${'$'}{1|open,closed|}`]);
    const measured = parse(asTyped(SNIPPETS[`margin-depth (${PEG})`]!));
    const accepts = new Ajv2020({ allowUnionTypes: true }).compile({ ...pegSchema, required: [] });
    expect([measured, accepts(measured), accepts.errors]).toEqual([{ 'margin-depth': '1.4 m' }, true, null]);
  });

  test('write one way of several: a place by degrees, features by their words', () => {
    expect(parse(asTyped(SNIPPETS[`position (${PEG})`]!))).toEqual({ position: { lat: null, lng: null } });
    expect(parse(asTyped(SNIPPETS[`features (${PEG})`]!))).toEqual({ features: [] });
  });

  test('write what a thing in a list must have', () => {
    expect(SNIPPETS[`hazards (${PEG})`]!.body.map((line) => line.replace(/:.*/, ':'))).toEqual([
      'hazards:',
      '  - kind:',
      '    place:',
      '    severity:',
      '    likelihood:',
      '    found-on:',
    ]);
  });
});
