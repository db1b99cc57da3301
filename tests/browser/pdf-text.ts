import { inflateSync } from 'node:zlib';

/** What a PDF holds, as far as tests ask. */
export interface ReadPdf {
  /** The words of each page in the order they are drawn. */
  readonly pages: readonly string[];
  readonly isTagged: boolean;
  /** Its language, a BCP 47 tag. */
  readonly language: string;
  /** The titles of its outline, in order. */
  readonly outline: readonly string[];
  /** Addresses outside it that its links lead to. */
  readonly addresses: readonly string[];
}

/**
 * Reads a PDF as Chromium writes it (ISO 32000-1: 7.5.4 cross-reference table, 7.7.2 catalogue, 7.7.3 page tree, 9.4.3 text,
 * 9.10.3 ToUnicode, 12.3.3 outline). It shares nothing with the command that printed it.
 * @throws where the file has no cross-reference table
 */
export function readPdf(pdf: Buffer): ReadPdf {
  const file = pdf.toString('latin1');
  const objects = objectsOf(file);
  const at = (reference: string | undefined) => objects.get(Number.parseInt(reference ?? '', 10)) ?? '';
  const catalogue = at(/\/Root (\d+) 0 R/.exec(file.slice(file.lastIndexOf('trailer')))?.[1]);
  const fonts = new Map<string, Font>();
  const fontOf = (reference: string) => {
    const font = fonts.get(reference) ?? readFont(streamOf(at(/\/ToUnicode (\d+) 0 R/.exec(at(reference))?.[1])));
    fonts.set(reference, font);
    return font;
  };
  const leaves = (node: string): readonly string[] => {
    const kids = /\/Kids \[([^\]]*)\]/.exec(node)?.[1];
    return kids === undefined ? [node] : [...kids.matchAll(/(\d+) 0 R/g)].flatMap(([, kid]) => leaves(at(kid)));
  };
  return {
    pages: leaves(at(/\/Pages (\d+) 0 R/.exec(catalogue)?.[1])).map((page) => {
      const named = new Map([...page.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name, font]) => [name!, font!]));
      return textOf(streamOf(at(/\/Contents (\d+) 0 R/.exec(page)?.[1])), (name) => fontOf(named.get(name) ?? ''));
    }),
    isTagged: /\/MarkInfo\s*<<[^>]*\/Marked true/.test(catalogue) && catalogue.includes('/StructTreeRoot'),
    language: /\/Lang \(([^)]*)\)/.exec(catalogue)?.[1] ?? '',
    outline: titlesOf(at(/\/Outlines (\d+) 0 R/.exec(catalogue)?.[1]), at),
    addresses: [...new Set([...file.matchAll(/\/URI \(([^)]*)\)/g)].map(([, address]) => address!))],
  };
}

function objectsOf(file: string): ReadonlyMap<number, string> {
  const table = /xref\s+0 (\d+)\s+/g;
  table.lastIndex = Number(/startxref\s+(\d+)/.exec(file.slice(-64))?.[1]);
  const head = table.exec(file);
  if (head === null) throw new Error('no cross-reference table');
  const starts = [
    ...file.slice(table.lastIndex, table.lastIndex + Number(head[1]) * 20).matchAll(/(\d{10}) \d{5} ([nf])/g),
  ];
  return new Map(starts.map(([, start], id) => [id, file.slice(Number(start), file.indexOf('endobj', Number(start)))]));
}

function streamOf(object: string): string {
  const begin = object.indexOf('stream');
  if (begin < 0) return '';
  const bytes = Buffer.from(object.slice(begin).replace(/^stream\r?\n/, ''), 'latin1');
  return object.slice(0, begin).includes('FlateDecode')
    ? inflateSync(bytes).toString('latin1')
    : bytes.toString('latin1');
}

/** The letters of a font by their codes, and how many digits a code has. */
interface Font {
  readonly digits: number;
  readonly letters: ReadonlyMap<number, string>;
}

function readFont(toUnicode: string): Font {
  const letters = new Map<number, string>();
  const text = (hex: string) => Buffer.from(hex, 'hex').swap16().toString('utf16le');
  for (const [, block] of toUnicode.matchAll(/beginbfchar([\s\S]*?)endbfchar/g)) {
    for (const [, code, to] of block!.matchAll(/<(\w+)> <(\w+)>/g)) letters.set(Number.parseInt(code!, 16), text(to!));
  }
  for (const [, block] of toUnicode.matchAll(/beginbfrange([\s\S]*?)endbfrange/g)) {
    for (const [, low, high, to] of block!.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g)) {
      const first = Number.parseInt(low!, 16);
      for (let code = first; code <= Number.parseInt(high!, 16); code++) {
        letters.set(code, String.fromCodePoint(Number.parseInt(to!, 16) + code - first));
      }
    }
  }
  return { digits: /begincodespacerange\s*<(\w+)>/.exec(toUnicode)?.[1]?.length ?? 4, letters };
}

/** A stream of a page: each piece of text that is shown, a space between two that are placed apart. */
function textOf(stream: string, fontOf: (name: string) => Font): string {
  let font: Font | null = null;
  const words: string[] = [];
  for (const [, name, hex, apart] of stream.matchAll(/\/(F\d+) [\d.]+ Tf|<([0-9A-Fa-f]+)>|\b(Td|Tm|ET)\b/g)) {
    if (name !== undefined) font = fontOf(name);
    if (apart !== undefined) words.push(' ');
    const { digits, letters } = font ?? { digits: 4, letters: new Map<number, string>() };
    for (const code of hex?.match(new RegExp(`.{${digits}}`, 'g')) ?? []) {
      words.push(letters.get(Number.parseInt(code, 16)) ?? '');
    }
  }
  return words.join('').replace(/\s+/g, ' ').trim();
}

function titlesOf(node: string, at: (reference: string | undefined) => string): readonly string[] {
  const titles: string[] = [];
  for (let item = at(/\/First (\d+) 0 R/.exec(node)?.[1]); item !== ''; item = at(/\/Next (\d+) 0 R/.exec(item)?.[1])) {
    const plain = /\/Title \(((?:\\.|[^\\)])*)\)/.exec(item)?.[1]?.replace(/\\(.)/g, '$1');
    const wide = /\/Title <FEFF(\w*)>/i.exec(item)?.[1];
    titles.push(
      plain ??
        Buffer.from(wide ?? '', 'hex')
          .swap16()
          .toString('utf16le'),
      ...titlesOf(item, at),
    );
  }
  return titles;
}
