import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { PEG_FIELD_ORDER } from '../../src/content/peg-field-order.ts';
import { fieldList, fieldNames } from '../../src/content/schemas/field-list.ts';
import { fieldTables } from '../../src/content/schemas/field-tables.ts';
import { jsonSchemas } from '../../src/content/schemas/json-schemas.ts';

const HERE = new URL('../../src/content/', import.meta.url);
const FORMAT = readFileSync(new URL('format.md', HERE), 'utf8');
const SCHEMAS = new Map([...jsonSchemas()].map(([name, text]) => [name.replace('.json', ''), JSON.parse(text)]));

/** The part of format.md on one kind of file. */
function sectionOf(file: string): string {
  const start = FORMAT.indexOf(`## \`${file}\`\n`);
  expect(start, `a section on ${file}`).toBeGreaterThan(-1);
  const end = FORMAT.indexOf('\n## ', start + 4);
  return FORMAT.slice(start, end === -1 ? undefined : end);
}

/** The file each schema is of: what stands in its title. */
const fileOf = (schema: { readonly title: string }) => /\S+\.(?:md|csv|geojson)/.exec(schema.title)![0];

test('the tables of every field are those of today: else run npm run -s venue -- schema', () => {
  expect(readFileSync(new URL('fields.md', HERE), 'utf8')).toBe(fieldTables());
});

describe('format.md', () => {
  test.each([...SCHEMAS.keys()])('tells every field of %s', (name) => {
    const schema = SCHEMAS.get(name);
    const told = new Set(sectionOf(fileOf(schema)).match(/[A-Za-z][A-Za-z0-9_-]*/g));
    // A hazard, and a survey of the lines, are told once, where a peg's record and venue.md are; GeoJSON has its own names.
    const elsewhere =
      name === 'water' ? new Set([...fieldNames(SCHEMAS.get('peg')), ...fieldNames(SCHEMAS.get('venue'))]) : new Set();
    const ofGeojson = name === 'water-map' ? ['type', 'features', 'properties', 'geometry', 'coordinates'] : [];
    const untold = [...fieldNames(schema)].filter(
      (field) => !told.has(field) && !elsewhere.has(field) && !ofGeojson.includes(field),
    );
    expect(untold).toEqual([]);
  });

  test.each([...SCHEMAS.keys()].filter((name) => name.endsWith('-row')))(
    'lists the columns of %s and no others',
    (name) => {
      const schema = SCHEMAS.get(name);
      const section = sectionOf(fileOf(schema));
      // Lists of columns stand in one span each: `a,b,c`, with a line break or a gap behind a comma.
      const lists = [...section.matchAll(/`([a-z_]+(?:,\s?[a-z_]+)+,?)`/g)].map(([, list]) => list!.split(/,\s?/));
      const known = new Set(Object.keys(schema.properties));
      const strange = lists
        .flat()
        .filter((column) => column !== '' && !known.has(column) && !/^(carp|<part>)_/.test(column));
      expect(strange).toEqual([]);
      expect(lists.length).toBeGreaterThan(0);
    },
  );

  test.each(['venue', 'peg', 'match'])('gives an example of %s that knows no field the schema does not', (name) => {
    const schema = SCHEMAS.get(name);
    const example = parse(/```yaml\n([\s\S]*?)```/.exec(sectionOf(fileOf(schema)))![1]!);
    const known = new Set(fieldList(schema).map(({ field }) => field));
    const paths = (value: unknown, path: string): readonly string[] => {
      if (Array.isArray(value)) return value.flatMap((each) => paths(each, `${path}[]`));
      if (typeof value !== 'object' || value === null) return [];
      return Object.entries(value).flatMap(([key, inner]) => {
        const field = path === '' ? key : `${path}.${key}`;
        return [field, ...paths(inner, field)];
      });
    };
    const used = new Set(paths(example, ''));
    // A field whose own fields the writer names (the sections of a match) has none in the schema.
    const isFree = (field: string) => {
      const parent = field.slice(0, Math.max(0, field.lastIndexOf('.')));
      return known.has(parent) && ![...known].some((each) => each.startsWith(`${parent}.`));
    };
    expect([...used].filter((field) => !known.has(field) && !isFree(field))).toEqual([]);
    // Every field that stands at the top is shown, so that the order to write them in can be seen.
    const top = [...known].filter((field) => !/[.[]/.test(field));
    expect(top.filter((field) => !used.has(field) && !sectionOf(fileOf(schema)).includes(`\`${field}`))).toEqual([]);
  });
});

test('a field that a command adds to a peg record goes where the example of format.md shows it', () => {
  const example = parse(/```yaml\n([\s\S]*?)```/.exec(sectionOf('pegs/<water>/<peg>.md'))![1]!);
  const maps: readonly (readonly [string, object])[] = [
    ['', example],
    ...['platform', 'bank', 'clearance', 'measured-line-distance'].map((map) => [map, example[map]] as const),
    ['hazards', example.hazards[0]],
    ['photos', example.photos[0]],
  ];
  for (const [map, shown] of maps) {
    const order = PEG_FIELD_ORDER(map === '' ? [] : [map]);
    const keys = Object.keys(shown);
    expect(
      order.filter((key) => keys.includes(key)),
      map || 'the record',
    ).toEqual(keys);
  }
  expect(PEG_FIELD_ORDER(['hazards'])).toContain('mapped-as');
  expect(PEG_FIELD_ORDER(['no-such-map'])).toEqual([]);
});
