/** What the venue calls a feature; one that is not on its list any more goes by its id. */
export function featureName(features: readonly { readonly id: string; readonly name: string }[], id: string): string {
  return features.find((feature) => feature.id === id)?.name ?? id;
}
