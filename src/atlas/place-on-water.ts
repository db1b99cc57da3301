import type { Water } from '../domain/map.ts';
import { nameOf } from '../domain/name-of.ts';

/** Names a place of a water's map as readers know it: `Kiln Pool, Lane gate`; the water's own name for all of it. */
export function placeOnWater({ name, map }: Pick<Water, 'name' | 'map'>, mappedAs: string | undefined): string {
  if (mappedAs === undefined) return name;
  return `${name}, ${mappedName(map, mappedAs)}`;
}

/** The name of a path or a place of the map by its id; the id itself where nothing on the map has it, so that it is not lost. */
export function mappedName({ paths, places }: Water['map'], id: string): string {
  const path = paths.find((one) => one.id === id);
  if (path !== undefined) return path.name ?? `path ${id}`;
  return nameOf(places, id);
}
