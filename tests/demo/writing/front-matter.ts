import { stringify } from 'yaml';

/** What stands behind a key of front matter. */
export type Value = string | number | boolean | readonly Value[] | { readonly [key: string]: Value | undefined };

/** A Markdown file: front matter as a club would write it by hand, then the body. Keys without a value are left out. */
export function markdownFile(fields: Readonly<Record<string, Value | undefined>>, body: string): string {
  const lines = Object.entries(fields).flatMap(([key, value]) => (value === undefined ? [] : fieldLines(key, value)));
  return ['---', ...lines, '---', '', ...(body === '' ? [] : [body.trim(), ''])].join('\n');
}

/** Lists of records get a line a field, everything else stands on one line. */
function fieldLines(key: string, value: Value): string[] {
  if (Array.isArray(value) && value.length > 0 && typeof value[0] === 'object') {
    return [`${key}:`, ...value.flatMap((item: Value) => itemLines(item))];
  }
  return [`${key}: ${onOneLine(value)}`];
}

function itemLines(item: Value): string[] {
  const entries = Object.entries(item).filter(([, value]) => value !== undefined);
  const flow = `  - ${onOneLine(item)}`;
  if (flow.length <= 110) return [flow];
  return entries.map(([key, value], i) => `${i === 0 ? '  - ' : '    '}${key}: ${onOneLine(value as Value)}`);
}

function onOneLine(value: Value): string {
  return stringify(withoutGaps(value), { collectionStyle: 'flow', lineWidth: 0, flowCollectionPadding: true }).trim();
}

function withoutGaps(value: Value): Value {
  if (Array.isArray(value)) return value.map(withoutGaps);
  if (typeof value !== 'object') return value;
  const kept = Object.entries(value).filter((entry): entry is [string, Value] => entry[1] !== undefined);
  return Object.fromEntries(kept.map(([key, inner]) => [key, withoutGaps(inner)]));
}
