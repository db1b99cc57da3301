import { readFileSync } from 'node:fs';

/** One rule of a stylesheet: each selector of its list apart. */
export interface StyleRule {
  readonly selector: string;
  readonly declarations: ReadonlyMap<string, string>;
  readonly isPrint: boolean;
}

const read = (name: string) =>
  readFileSync(new URL(`../../src/styles/${name}.css`, import.meta.url), 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');

/** The rules of a stylesheet in their order, those for paper marked. */
export function rulesOf(name: string): readonly StyleRule[] {
  const css = read(name);
  const printed: [number, number][] = [];
  for (const { index } of css.matchAll(/@media print\s*\{/g)) {
    let end = css.indexOf('{', index) + 1;
    for (let depth = 1; depth > 0; end += 1) depth += css[end] === '{' ? 1 : css[end] === '}' ? -1 : 0;
    printed.push([index, end]);
  }
  return [...css.matchAll(/([^{}]+)\{([^{}]*)\}/g)].flatMap(({ 1: head, 2: body, index }) => {
    const declarations = new Map(
      body!.split(';').flatMap((line) => {
        const at = line.indexOf(':');
        return at < 0 ? [] : [[line.slice(0, at).trim(), line.slice(at + 1).trim()] as const];
      }),
    );
    const isPrint = printed.some(([start, end]) => index >= start && index < end);
    return selectorsOf(head!).map((selector) => ({ selector, declarations, isPrint }));
  });
}

/** A list of selectors apart at its commas, those inside brackets left alone. */
function selectorsOf(head: string): string[] {
  return head
    .split(/,(?![^(]*\))/)
    .map((selector) => selector.trim().replace(/\s+/g, ' '))
    .filter((selector) => selector !== '');
}

/** The colours that the pages' custom properties name: on a light screen, on a dark one, on paper. */
export function palettes(): readonly { readonly name: string; readonly colours: ReadonlyMap<string, string> }[] {
  const inks = (css: string, index: number) => {
    const block = [...css.matchAll(/:root \{([^}]*)\}/g)][index]![1]!;
    return [...block.matchAll(/--([a-z]+): (#[0-9a-f]{3,6});/g)].map(
      ([, ink, hex]) => [ink!, hex!.length === 4 ? hex!.replace(/[0-9a-f]/g, '$&$&') : hex!] as const,
    );
  };
  const screen = read('almanac');
  return [
    { name: 'light', colours: new Map(inks(screen, 0)) },
    { name: 'dark', colours: new Map([...inks(screen, 0), ...inks(screen, 1)]) },
    { name: 'print', colours: new Map([...inks(screen, 0), ...inks(read('print'), 0)]) },
  ];
}
