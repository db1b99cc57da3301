import type { Feature } from 'geojson';
import L from 'leaflet';
import { bindTextTooltip } from './text-tooltip.ts';

/** A peg as the live map needs it. */
export interface MapPeg {
  readonly peg: string;
  /** With the word closed and why, where it is. */
  readonly name: string;
  readonly sheet: string;
  readonly closed: boolean;
  readonly at: L.LatLng;
  readonly facingDegrees: number;
}

/** Something that stands at a point of the map and takes room there. */
export interface MapMark {
  readonly at: L.LatLng;
  readonly element: HTMLElement;
  /** From the point to the middle of the mark, in pixels. */
  readonly offset: L.Point;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

/** Half the size of a peg's mark and the room about it. */
const HALF = 13;
/** Half the size of a throw line's ring. */
const HALF_RING = 8;
/** How far behind the peg its number stands. */
const BEHIND_PIXELS = 15;

/** Words in the plate of a place, as on the drawn map; a throw line has a ring of its own. */
const PLACE_WORDS: Readonly<Record<string, string>> = {
  finding: '!',
  aed: 'AED',
  'throw-line': '',
  gate: 'gate',
  'car-park': 'P',
  lodge: 'lodge',
  toilet: 'WC',
  inlet: 'in',
  outlet: 'out',
  gauge: 'gauge',
  aerator: 'aerator',
};

/** Pegs as links to their sheets, each behind its platform. */
export function pegMarks(map: L.Map, pegs: readonly MapPeg[]): readonly MapMark[] {
  return pegs.map((peg) => {
    const link = document.createElement('a');
    link.href = peg.sheet;
    link.draggable = false;
    link.setAttribute('aria-label', peg.name);
    const mark = document.createElement('span');
    mark.classList.toggle('is-closed', peg.closed);
    const number = document.createElement('span');
    number.textContent = peg.peg;
    link.append(number);
    // While there is no room for the number a dot stands for it: too small for a finger, so it is no link.
    mark.append(link, document.createElement('i'));
    const turn = (peg.facingDegrees * Math.PI) / 180;
    const offset = L.point(-BEHIND_PIXELS * Math.sin(turn), BEHIND_PIXELS * Math.cos(turn));
    mark.style.transform = `translate(${offset.x}px, ${offset.y}px)`;
    const icon = L.divIcon({ className: 'live-peg', html: mark, iconSize: [0, 0] });
    L.marker(peg.at, { icon, interactive: false, keyboard: false, zIndexOffset: 1000 }).addTo(map);
    return { at: peg.at, element: mark, offset, halfWidth: HALF, halfHeight: HALF };
  });
}

/** Places as plates with a word; what helps in need comes first, so that it keeps its room. */
export function placeMarks(map: L.Map, features: readonly Feature[]): readonly MapMark[] {
  return Object.entries(PLACE_WORDS).flatMap(([kind, words]) =>
    features.flatMap(({ geometry, properties }) => {
      if (properties?.kind !== kind || geometry.type !== 'Point') return [];
      const [lng = 0, lat = 0] = geometry.coordinates;
      const plate = document.createElement('span');
      plate.textContent = words;
      const icon = L.divIcon({ className: `live-place live-${kind}`, html: plate, iconSize: [0, 0] });
      bindTextTooltip(L.marker([lat, lng], { icon, keyboard: false }).addTo(map), properties.name ?? words);
      return [
        {
          at: L.latLng(lat, lng),
          element: plate,
          offset: L.point(0, 0),
          halfWidth: HALF_RING + words.length * 4,
          halfHeight: words === '' ? HALF_RING : HALF,
        },
      ];
    }),
  );
}

/** Shows each mark that finds room beside those before it; the others wait as dots for a closer zoom. */
export function showMarks(map: L.Map, marks: readonly MapMark[]): void {
  const unclutter = () => {
    const shown: { readonly middle: L.Point; readonly halfWidth: number; readonly halfHeight: number }[] = [];
    for (const { at, element, offset, halfWidth, halfHeight } of marks) {
      const middle = map.latLngToLayerPoint(at).add(offset);
      const isFree = shown.every(
        (other) =>
          Math.abs(other.middle.x - middle.x) >= other.halfWidth + halfWidth ||
          Math.abs(other.middle.y - middle.y) >= other.halfHeight + halfHeight,
      );
      if (isFree) shown.push({ middle, halfWidth, halfHeight });
      element.classList.toggle('is-dot', !isFree);
    }
  };
  map.on('zoomend', unclutter);
  unclutter();
}
