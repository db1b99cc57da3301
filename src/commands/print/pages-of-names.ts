/**
 * On which page of a PDF each name lies that a link of it leads to, the first page being 1 (ISO 32000-1: 7.7.3 page tree,
 * 12.3.2.3 named destinations). Reads what Chromium writes: objects one by one, not in compressed streams.
 * @param pdf a PDF as Chromium, Chrome or Edge writes it
 * @returns names of letters, digits and hyphens; empty where the PDF has none, or is written otherwise
 */
export function pagesOfNames(pdf: Buffer): ReadonlyMap<string, number> {
  const text = pdf.toString('latin1');
  const kids = new Map<string, readonly string[]>();
  for (const [, id, list] of text.matchAll(/(?:^|[\r\n])(\d+) 0 obj\s*<<\/Type \/Pages\b[^>]*?\/Kids \[([^\]]*)\]/g)) {
    kids.set(
      id!,
      [...list!.matchAll(/(\d+) 0 R/g)].map(([, kid]) => kid!),
    );
  }
  const held = new Set([...kids.values()].flat());
  const root = [...kids.keys()].find((id) => !held.has(id));
  const pages = root === undefined ? [] : leaves(root, kids);
  const numbers = new Map(pages.map((id, index) => [id, index + 1]));
  const names = text.matchAll(/\/([A-Za-z0-9-]+) \[(\d+) 0 R \/XYZ/g);
  return new Map(
    [...names].flatMap(([, name, page]) => {
      const number = numbers.get(page!);
      return number === undefined ? [] : [[name!, number] as const];
    }),
  );
}

/** The pages below a node of the tree, in their order. */
function leaves(node: string, kids: ReadonlyMap<string, readonly string[]>): readonly string[] {
  return kids.get(node)?.flatMap((kid) => leaves(kid, kids)) ?? [node];
}
