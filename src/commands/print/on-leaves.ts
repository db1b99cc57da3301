/** Where the parts of a booklet lie once every sheet begins on the front of a leaf. */
export interface OnLeaves {
  readonly numbers: readonly (readonly [part: string, page: number])[];
  /** The sheets that an empty page goes before. */
  readonly emptyBefore: readonly string[];
}

/**
 * Lets every sheet begin on an odd page, the front of a leaf, so that one peg's leaf can be changed alone.
 * @param pages the page each part begins on as printed, the first being 1, in their order
 * @param sheets which of the parts are sheets
 */
export function onLeaves(
  pages: readonly (readonly [part: string, page: number])[],
  sheets: ReadonlySet<string>,
): OnLeaves {
  const emptyBefore: string[] = [];
  const numbers = pages.map(([part, page]) => {
    if (sheets.has(part) && (page + emptyBefore.length) % 2 === 0) emptyBefore.push(part);
    return [part, page + emptyBefore.length] as const;
  });
  return { numbers, emptyBefore };
}
