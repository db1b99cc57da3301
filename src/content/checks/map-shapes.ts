import type { Ring } from '../../domain/place.ts';
import { localPlane } from '../../ground/geodesy/local-plane.ts';
import type { PlaneRing } from '../../ground/plane/plane-point.ts';
import { ringSegments, segmentIndex } from '../../ground/plane/segment-index.ts';
import type { Content, PlacedMap } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';
import { firstSelfCrossing } from './self-crossing.ts';

/** Outlines, islands and patches do not cross themselves, and islands lie inside the outline. */
export function checkMapShapes({ waters }: Content): readonly Fault[] {
  return waters.flatMap(({ map }) =>
    map === null ? [] : [...ringFaults(map), ...areaFaults(map), ...islandFaults(map)],
  );
}

/** Rings of outline and islands that cross themselves. */
export function ringFaults(map: PlacedMap): readonly Fault[] {
  const { outline, islands } = map.map;
  return [
    ...crossingFaults(map, outline, outline, 'outline'),
    ...islands.flatMap((island) => crossingFaults(map, island, island.ring, `island${named(island.name)}`)),
  ];
}

function areaFaults(map: PlacedMap): readonly Fault[] {
  return map.map.areas.flatMap((area) => crossingFaults(map, area, area.ring, `${area.kind}${named(area.name)}`));
}

function crossingFaults(map: PlacedMap, thing: object, ring: Ring, what: string): readonly Fault[] {
  const crossing = firstSelfCrossing(flat(ring, ring));
  if (crossing === null) return [];
  const [a, b] = crossing.map((segment) => {
    const { lat, lng } = ring[segment]!;
    return `${lng}, ${lat}`;
  });
  return [
    {
      ...faultAt(map.source, map.pathOf(thing), {
        rule: 'ring-crossing',
        found: `an ${what} that crosses itself where the sides from ${a} and from ${b} meet`.replace(
          /^an (?![aeiou])/,
          'a ',
        ),
        expected: 'a ring whose sides meet only at its corners',
        mend: 'Move one of the corners there, or put the points in their order along the bank.',
      }),
      field: 'coordinates',
    },
  ];
}

function islandFaults(map: PlacedMap): readonly Fault[] {
  const { outline, islands } = map.map;
  if (islands.length === 0) return [];
  const inside = segmentIndex(ringSegments([flat(outline, outline)]));
  return islands.flatMap((island) => {
    const out = flat(island.ring, outline).findIndex(
      (p) => !inside.isInside(p) && inside.nearest(p)!.distanceMetres > 1,
    );
    if (out === -1) return [];
    const { lat, lng } = island.ring[out]!;
    return [
      {
        ...faultAt(map.source, map.pathOf(island), {
          rule: 'island-outside',
          found: `an island${named(island.name)} that reaches outside the outline at ${lng}, ${lat}`,
          expected: 'an island inside the outline',
          mend: 'Move the point inside, or draw the land there as part of the bank.',
        }),
        field: 'coordinates',
      },
    ];
  });
}

/** A ring in metres about the first corner of another. */
function flat(ring: Ring, about: Ring): PlaneRing {
  return ring.map(localPlane(about[0]!).toPlane);
}

function named(name: string | undefined): string {
  return name === undefined ? '' : ` ${name}`;
}
