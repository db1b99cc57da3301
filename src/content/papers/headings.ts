import type { BagPart } from '../../domain/bag.ts';

/** What a column of a result sheet holds. A unit stands where the column is one of a pair or names its own. */
export type ColumnUse =
  | { readonly what: 'peg' | 'name' | 'section' | 'position' | 'water' | 'points' }
  | { readonly what: 'weight'; readonly unit?: WeightUnit }
  | { readonly what: 'part'; readonly part: string; readonly unit?: WeightUnit }
  | { readonly what: 'count'; readonly part: string }
  /** One of several nets that make up the total. */
  | { readonly what: 'net' }
  | { readonly what: 'unknown' };

export type WeightUnit = 'lb' | 'oz' | 'dr' | 'kg' | 'g';

const WORDS: Readonly<Record<'peg' | 'name' | 'section' | 'position' | 'water' | 'points', RegExp>> = {
  peg: /^(peg|pegs|swim|peg (no|number|drawn)|drawn|draw)$/,
  name: /^(name|names|angler|anglers|angler s name|competitor|member|fished by)$/,
  section: /^(section|sec|sect|sctn)$/,
  position: /^(pos|posn|position|place|placing|rank|overall)$/,
  water: /^(water|pool|lake|venue|canal|pond)$/,
  points: /^(points|pts|section points|pen points|penalty points|pool money|payout|prize|winnings)$/,
};
const UNITS: Readonly<Record<WeightUnit, RegExp>> = {
  lb: /\b(lb|lbs|pounds?)\b/,
  oz: /\b(oz|ozs|ounces?)\b/,
  dr: /\b(dr|drs|drams?)\b/,
  kg: /\b(kg|kgs|kilos?|kilograms?)\b/,
  g: /\b(g|gr|grams?)\b/,
};
const WEIGHT = /\b(weight|wt|wgt|total|bag|result|weighed)\b/;
const NET = /^(net|weigh) ?\d+$/;
const COUNT = /\b(no|number|count|fish|qty)\b/;

/** A heading as it is compared: small letters, one blank between words, marks gone. */
export function headingWords(heading: string): string {
  return heading
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
}

/** What a heading says its column holds. Bag parts are known by id, name and species. */
export function columnUse(heading: string, bagParts: readonly BagPart[] = []): ColumnUse {
  const words = headingWords(heading);
  for (const [what, pattern] of Object.entries(WORDS)) {
    if (pattern.test(words)) return { what: what as keyof typeof WORDS };
  }
  if (NET.test(words)) return { what: 'net' };
  const units = (Object.keys(UNITS) as WeightUnit[]).filter((unit) => UNITS[unit].test(words));
  const unit = units.length === 1 ? { unit: units[0]! } : {};
  const part = bagParts.find(({ id, name, species }) =>
    [id, name, ...species].map(headingWords).some((word) => word !== '' && new RegExp(`\\b${word}s?\\b`).test(words)),
  );
  if (part !== undefined) {
    return COUNT.test(words) && units.length === 0
      ? { what: 'count', part: part.id }
      : { what: 'part', part: part.id, ...unit };
  }
  if (WEIGHT.test(words) || units.length > 0) return { what: 'weight', ...unit };
  return { what: 'unknown' };
}

/** Whether a row of texts can be the headings of results: a word for the peg and one for a weight. */
export function hasResultHeadings(row: readonly string[]): boolean {
  const uses = row.map((text) => columnUse(text));
  return uses.some(({ what }) => what === 'peg') && uses.some(({ what }) => what === 'weight' || what === 'net');
}
