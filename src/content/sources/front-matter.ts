import type { Fault } from '../fault.ts';
import { frontMatterPlace } from './front-matter-place.ts';
import { controlCharacterFaults, plainText } from './plain-text.ts';
import { faultOfFile } from './source.ts';
import { shown } from './text-place.ts';
import { readYaml, type YamlSource } from './yaml-source.ts';

/** A Markdown record: what its front matter says, and the text below it. */
export interface MarkdownRecord {
  readonly source: YamlSource;
  readonly body: string;
  /** The line of the file on which the body begins. */
  readonly bodyLine: number;
}

interface MarkdownRead {
  readonly record: MarkdownRecord | null;
  readonly faults: readonly Fault[];
}

/** Reads a file that begins with front matter between two lines of `---`. Never throws. */
export function readMarkdownRecord(file: string, fileText: string): MarkdownRead {
  const text = plainText(fileText);
  const characters = controlCharacterFaults(file, text);
  if (characters.length > 0) return { record: null, faults: characters };
  const place = frontMatterPlace(text);
  if (place === 'missing') return { record: null, faults: [missing(file, text)] };
  if (place === 'unclosed') return { record: null, faults: [unclosed(file, text)] };
  const yaml = text.slice(place.start, place.end);
  const { source, faults } = readYaml(file, yaml, 2);
  if (source === null) return { record: null, faults };
  return { record: { source, body: text.slice(place.body), bodyLine: yaml.split('\n').length + 2 }, faults };
}

function missing(file: string, text: string): Fault {
  const isEmpty = text.trim() === '';
  return faultOfFile(file, {
    rule: 'front-matter-missing',
    found: isEmpty ? 'an empty file' : shown(text.split('\n')[0] ?? ''),
    expected: 'a line of --- that begins the front matter',
    mend: 'Begin the file with a line of ---, then the fields, then a second line of ---.',
  });
}

function unclosed(file: string, text: string): Fault {
  return faultOfFile(
    file,
    {
      rule: 'front-matter-unclosed',
      found: 'the end of the file',
      expected: 'a second line of --- that ends the front matter',
      mend: 'Add a line of --- between the fields and the text.',
    },
    { line: text.split('\n').length, column: 1 },
  );
}
