import type { Peg } from '../domain/peg.ts';
import { shorePlaces } from '../ground/shore-place.ts';
import type { PlacedWater } from './content.ts';
import type { Placed } from './sources/source.ts';

/**
 * The same stands, those without a written facing turned straight out from the nearest shore of their water as drawn. Where its map
 * cannot be read that is a fault of its own, and nothing of the folder is published.
 */
export function facingsFromShore(
  stands: readonly Placed<Peg>[],
  waters: readonly PlacedWater[],
): readonly Placed<Peg>[] {
  const shores = new Map<string, ReturnType<typeof shorePlaces>>();
  const shoreOf = (id: string) => {
    const map = waters.find((water) => water.id === id)?.map?.map;
    if (!shores.has(id) && map !== undefined) shores.set(id, shorePlaces(map));
    return shores.get(id);
  };
  return stands.map((stand) => {
    const { value } = stand;
    if (value.isFacingEstimated !== true) return stand;
    const facingDegrees = shoreOf(value.water)?.(value.at).facingDegrees ?? value.facingDegrees;
    return { ...stand, value: { ...value, facingDegrees } };
  });
}
