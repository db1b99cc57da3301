import { stringify } from 'yaml';

/** What stands behind a key of front matter. */
export type Value = string | number | boolean | readonly Value[] | { readonly [key: string]: Value | undefined };

const LONGEST_LINE = 110;

/** A Markdown file: front matter as a club would write it by hand, then the body. Keys without a value are left out. */
export function markdownFile(fields: Readonly<Record<string, Value | undefined>>, body: string): string {
  const lines = Object.entries(fields).flatMap(([key, value]) => (value === undefined ? [] : fieldLines(key, value)));
  return ['---', ...lines, '---', '', ...(body === '' ? [] : [body.trim(), ''])].join('\n');
}

/** Lists of records get a line a record, what would be too long a line a field, and everything else one line. */
function fieldLines(key: string, value: Value): string[] {
  if (Array.isArray(value) && value.length > 0 && typeof value[0] === 'object') {
    return [`${key}:`, ...value.flatMap((item: Value & object) => itemLines(item))];
  }
  const line = `${key}: ${onOneLine(value)}`;
  if (line.length <= LONGEST_LINE || typeof value !== 'object' || Array.isArray(value)) return [line];
  return [`${key}:`, ...entriesOf(value).map(([inner, text]) => `  ${inner}: ${onOneLine(text)}`)];
}

function itemLines(item: Value & object): string[] {
  const flow = `  - ${onOneLine(item)}`;
  if (flow.length <= LONGEST_LINE) return [flow];
  return entriesOf(item).map(([key, value], i) => `${i === 0 ? '  - ' : '    '}${key}: ${onOneLine(value)}`);
}

function onOneLine(value: Value): string {
  return stringify(withoutGaps(value), { collectionStyle: 'flow', lineWidth: 0, flowCollectionPadding: true }).trim();
}

function withoutGaps(value: Value): Value {
  if (Array.isArray(value)) return value.map(withoutGaps);
  if (typeof value !== 'object') return value;
  return Object.fromEntries(entriesOf(value).map(([key, inner]) => [key, withoutGaps(inner)]));
}

function entriesOf(value: object): [string, Value][] {
  return Object.entries(value).filter((entry): entry is [string, Value] => entry[1] !== undefined);
}
