/**
 * The value below which a share of the weight lies, straight lines between the middles of the values' own weights. With equal
 * weights it is the plain quantile of `quantile.ts`: each value's place is the weight before it over all but one value's worth.
 */
export function weightedQuantile(
  of: readonly { readonly value: number; readonly counts: number }[],
  probability: number,
): number {
  const sorted = [...of].sort((a, b) => a.value - b.value);
  const places = [0];
  for (let i = 1; i < sorted.length; i++)
    places.push(places[i - 1]! + 0.5 * (sorted[i - 1]!.counts + sorted[i]!.counts));
  const at = probability * places.at(-1)!;
  const next = places.findIndex((place) => place >= at);
  if (next <= 0) return sorted[0]!.value;
  const share = (at - places[next - 1]!) / (places[next]! - places[next - 1]!);
  return sorted[next - 1]!.value + share * (sorted[next]!.value - sorted[next - 1]!.value);
}
