/** What the venue calls a feature, a bag part or a place of its map; one that is not on its list any more goes by its id. */
export function nameOf(known: readonly { readonly id: string; readonly name: string }[], id: string): string {
  return known.find((each) => each.id === id)?.name ?? id;
}
