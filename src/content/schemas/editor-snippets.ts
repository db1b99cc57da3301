import type { SchemaPart } from './field-list.ts';
import { jsonSchemas } from './json-schemas.ts';

/** The kinds of Markdown records, with where they lie. */
const RECORDS: Readonly<Record<string, string>> = {
  venue: 'venue.md',
  water: 'waters/<water>.md',
  peg: 'pegs/<water>/<peg>.md',
  notice: 'notices/<date>-<slug>.md',
  match: 'matches/<date>-<slug>.md',
  league: 'leagues/<slug>.md',
  association: 'association.md',
};

interface Snippet {
  readonly scope: 'markdown';
  readonly prefix: string;
  readonly body: readonly string[];
  readonly description: string;
}

/** A part of a schema with the examples that fields give, and the ways in which its fields go together. */
interface PartWithExamples extends SchemaPart {
  readonly oneOf?: readonly { readonly required: readonly string[] }[];
  readonly examples?: readonly (string | number | boolean)[];
}

/**
 * Every field of a record's front matter as a snippet for editors, by its name, its words to choose from included. Editors know a
 * file by one language, so that a schema reaches either the front matter or the text below it; a snippet reaches both.
 * @returns the text of a `.code-snippets` file
 */
export function editorSnippets(): string {
  const snippets: Record<string, Snippet> = {};
  for (const [kind, place] of Object.entries(RECORDS)) {
    const { properties = {} } = JSON.parse(jsonSchemas().get(`${kind}.json`)!) as SchemaPart;
    for (const [key, part] of Object.entries(properties)) {
      const body = fieldLines(key, part, new Stops());
      const description = `${place}${part.description === undefined ? '' : `: ${part.description}`}`;
      snippets[`${key} (${place})`] = { scope: 'markdown', prefix: key, body, description };
    }
  }
  return `${JSON.stringify(snippets, null, 2)}\n`;
}

/** Counts the places at which somebody types, from the first on. */
class Stops {
  #last = 0;

  next(): number {
    this.#last += 1;
    return this.#last;
  }
}

function fieldLines(key: string, part: PartWithExamples, stops: Stops): readonly string[] {
  const { anyOf, items, properties } = part;
  if (anyOf?.[0] !== undefined && properties === undefined) return fieldLines(key, anyOf[0], stops);
  if (items !== undefined) {
    // Of what may be a word or a thing the word is shorter.
    if (items.properties === undefined) return [`${key}: [\${${stops.next()}}]`];
    const [first = '', ...rest] = innerLines(items, stops);
    return [`${key}:`, `  - ${first}`, ...rest.map((line) => `    ${line}`)];
  }
  if (properties !== undefined) return [`${key}:`, ...innerLines(part, stops).map((line) => `  ${line}`)];
  return [`${key}: ${stop(part, stops)}`];
}

/** The fields a thing must have; all of them where it must have none. */
function innerLines({ properties = {}, required = [], oneOf }: PartWithExamples, stops: Stops): readonly string[] {
  const keys = oneOf?.[0]?.required ?? (required.length > 0 ? required : Object.keys(properties));
  return keys.flatMap((key) => fieldLines(key, properties[key] ?? {}, stops));
}

function stop({ type, enum: choices, examples = [] }: PartWithExamples, stops: Stops): string {
  const words = choices ?? (type === 'boolean' ? [true, false] : []);
  if (words.length > 0) return `\${${stops.next()}|${words.map((word) => escaped(String(word), ',|')).join(',')}|}`;
  const [example] = examples;
  return example === undefined ? `\${${stops.next()}}` : `\${${stops.next()}:${escaped(String(example), '')}}`;
}

/** What a snippet would read as its own. */
function escaped(text: string, more: string): string {
  return [...text].map((character) => (`\\$}${more}`.includes(character) ? `\\${character}` : character)).join('');
}
