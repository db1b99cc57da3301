import { describe, expect, it } from 'vitest';
import { contrastRatio, laidOver } from './contrast-ratio.ts';
import { palettes, rulesOf, type StyleRule } from './stylesheet.ts';

/**
 * What is drawn and means something stands out from every ground it can lie on by 3:1, letters by 4.5:1 (WCAG 2.2, success
 * criteria 1.4.11 and 1.4.3). Colours are read out of the stylesheets; a mark may stand out by its line or by its fill.
 */
const PAPER = ['paper'];
const MAP = ['paper', 'water'];
const SECTION = ['paper', 'water', 'earth'];

/** Of each stylesheet that draws: the grounds its marks lie on. */
const DRAWN: Readonly<Record<string, readonly string[]>> = {
  drawings: PAPER,
  'year-drawings': PAPER,
  'bank-strip': SECTION,
  'bank-bed': SECTION,
  'bank-piece': PAPER,
  'depth-profile': SECTION,
  map: MAP,
  'live-map': MAP,
  'peg-sheet': MAP,
  match: MAP,
  'bank-round': MAP,
  home: PAPER,
};

/** Grounds of marks that lie elsewhere than what else their stylesheet draws. */
const LIES_ON: Readonly<Record<string, readonly string[]>> = {
  '.bank-strip text': MAP,
  '.bank-strip .scale': PAPER,
  '.bank-strip .surface': MAP,
  '.b-peg .number': PAPER,
  '.b-closed.b-closed .number': ['ink'],
  '.b-closed.b-closed .own': ['ink'],
  '.chart .surface': MAP,
  '.depth-profile .figure': ['earth'],
  '.bank-strip circle': PAPER,
  '.bank-strip .thin circle': PAPER,
  '.bank-strip .fair circle': PAPER,
  '.water-map .m-closed text': ['ink'],
  '.water-map .m-aed text': ['#00683b'],
  '.water-map .m-depth': ['water'],
  '.live-map .live-way-band': ['reed'],
  '.m-section text': PAPER,
  '.depth-profile .said': PAPER,
};

/** Marks whose line or fill comes from a rule before them. */
const AFTER: Readonly<Record<string, readonly string[]>> = {
  '.chart .fair rect': ['.chart .bar rect'],
  '.chart .thin rect': ['.chart .bar rect'],
  '.chart .now.solid rect': ['.chart .bar rect', '.chart .now rect'],
  '.framing-year g.bar.solid .hollow': ['.chart .bar rect'],
  ...Object.fromEntries(
    ['0', '1', '2', '3'].flatMap((part) => [
      [`.make-up-bars .p${part}`, ['.make-up-bars .part']],
      [`.make-up-bars g.bar.solid .p${part}`, ['.make-up-bars .part']],
    ]),
  ),
  '.m-aerator path': ['.m-place path'],
  '.m-throw-line path': ['.m-place path'],
  '.m-aed path': ['.m-place path'],
  '.m-peg > path:first-child': ['.m-peg path'],
  '.m-closed path': ['.m-peg path'],
  '.m-peg.seen circle': ['.m-peg circle'],
  '.m-peg.seen path': ['.m-peg path'],
  '.b-closed .notch': ['.notch'],
  '.m-section.m-other path': ['.m-section path'],
  '.live-map .live-reeds': ['.live-map path'],
  '.live-map .live-lilies': ['.live-map path'],
  '.live-map .live-trees': ['.live-map path'],
  '.bank-strip .scale': ['.bank-strip text'],
  '.depth-profile .said': ['.chart text'],
  '.depth-profile .figure': ['.chart .figure'],
  '.water-map .m-depth': ['.water-map text'],
  '.bank-strip text.sign': ['.bank-strip .figure'],
  '.live-map .live-building': ['.live-map path'],
};

/** What needs no contrast, and why. */
const SAYS_NOTHING: Readonly<Record<string, string>> = {
  '.chart .rule': 'a grid line: the figures beside it say the same',
  '.bank-strip .rule': 'a grid line: the figures beside it say the same',
  '.chart .water': 'a wash: the surface and the bed are lines',
  '.bank-strip .water': 'a wash: the surface and the bed are lines',
  '.bank-strip .earth': 'a wash: the bed is a line',
  '.hill': 'a wash: each bed is a line',
  '.bank-strip .deep': 'the ground behind words, which are soft on water',
  '.m-sector': 'a wash: the sheet names the sector in degrees',
  '.hit': 'takes a tap, is not seen',
};

const IS_TEXT = /text\b|\.(?:figure|scale|said|number|joint|letter|m-depth|long|line-name|own)$|text\[/;

interface Mark {
  readonly sheet: string;
  readonly rule: StyleRule;
  readonly grounds: readonly string[];
}

const drawnIn = (sheet: string) =>
  rulesOf(sheet).filter(({ declarations }) => declarations.has('fill') || declarations.has('stroke'));

const marks: readonly Mark[] = Object.entries(DRAWN).flatMap(([sheet, grounds]) =>
  drawnIn(sheet)
    .filter(({ selector }) => !(selector in SAYS_NOTHING))
    .map((rule) => ({ sheet, rule, grounds: LIES_ON[rule.selector] ?? grounds })),
);

/** The rule of a mark over all that it stands on: what it inherits first, then the screen's word, then paper's. */
function valuesOf({ sheet, rule }: Mark, isPrint: boolean): ReadonlyMap<string, string> {
  const all = [...drawnIn('drawings'), ...drawnIn('map'), ...drawnIn(sheet)].filter((each) => isPrint || !each.isPrint);
  const of = (selector: string) => all.filter((each) => each.selector === selector);
  const below = [...(AFTER[rule.selector] ?? []), rule.selector].flatMap(of);
  return new Map(below.flatMap(({ declarations }) => [...declarations]));
}

/** How far a mark stands out from a ground by its line or its fill; 0 where it has neither. */
function standsOut(mark: Mark, ground: string, colours: ReadonlyMap<string, string>, isPrint: boolean): number {
  const values = valuesOf(mark, isPrint);
  const isText = IS_TEXT.test(mark.rule.selector);
  const back = ground.startsWith('#') ? ground : colours.get(ground)!;
  const opacity = Number(values.get('opacity') ?? 1);
  const ratios = (isText ? (['fill'] as const) : (['stroke', 'fill'] as const)).flatMap((property) => {
    const value = values.get(property) ?? 'none';
    const named = /^var\(--([a-z]+)\)$/.exec(value)?.[1];
    // A pattern is drawn in soft strokes.
    const hex = value.startsWith('url(')
      ? colours.get('soft')
      : named === undefined
        ? hexOf(value)
        : colours.get(named);
    if (hex === undefined) return [];
    return contrastRatio(laidOver(hex, back, opacity * Number(values.get(`${property}-opacity`) ?? 1)), back);
  });
  return Math.max(0, ...ratios);
}

function hexOf(value: string): string | undefined {
  if (/^#[0-9a-f]{6}$/.test(value)) return value;
  return /^#[0-9a-f]{3}$/.test(value) ? value.replace(/[0-9a-f]/g, '$&$&') : undefined;
}

const namesNothing = ({ rule: { declarations } }: Mark) =>
  ['fill', 'stroke'].every((property) => ['none', undefined].includes(declarations.get(property)));

describe.each(palettes())('on a $name ground', ({ name, colours }) => {
  it('everything drawn stands out', () => {
    const faint = marks
      .filter((mark) => !namesNothing(mark) && (name === 'print' || !mark.rule.isPrint))
      .flatMap((mark) =>
        mark.grounds.flatMap((ground) => {
          const least = IS_TEXT.test(mark.rule.selector) ? 4.5 : 3;
          const ratio = standsOut(mark, ground, colours, name === 'print');
          return ratio >= least ? [] : [`${mark.sheet}.css ${mark.rule.selector} on ${ground}: ${ratio.toFixed(2)}`];
        }),
      );
    expect(faint).toEqual([]);
  });
});

it('reads the drawings: bed, bars, whiskers, dots, strip, map signs and live map', () => {
  const selectors = new Set(marks.map(({ rule }) => rule.selector));
  for (const one of ['.chart .earth', '.chart .bar rect', '.chart .whisker', '.chart .dot', '.bed-2']) {
    expect(selectors).toContain(one);
  }
  for (const one of ['.m-place path', '.m-peg circle', '.live-map .live-outline']) expect(selectors).toContain(one);
});

it('knows every selector that it names', () => {
  const known = new Set(Object.keys(DRAWN).flatMap((sheet) => rulesOf(sheet).map(({ selector }) => selector)));
  const named = [...Object.keys(LIES_ON), ...Object.keys(AFTER), ...Object.values(AFTER).flat()];
  expect([...named, ...Object.keys(SAYS_NOTHING)].filter((selector) => !known.has(selector))).toEqual([]);
});
