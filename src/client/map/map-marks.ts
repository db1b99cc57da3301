import type { Feature } from 'geojson';
import L from 'leaflet';
import { partMarks } from '../../atlas/drawing/part-marks.ts';
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
  /** Steps of its own bank. */
  readonly bankSteps: number;
  /** Whether the reader came from its sheet. */
  readonly isAsked: boolean;
}

/** Something that stands at a point of the map and takes room there. */
export interface MapMark {
  readonly at: L.LatLng;
  readonly element: HTMLElement;
  /** Leads from the mark to its point where it stands apart. */
  readonly lead: HTMLElement;
  /** From the point to where the middle of the mark belongs, in pixels. */
  readonly offset: L.Point;
  readonly radius: number;
}

/** Half the room of a peg’s mark, so that 24 pixels of it are free whichever way its neighbour stands, and of a throw line’s ring. */
const HALF_TARGET = 17;
const HALF_RING = 8;
/** Room between marks. */
const MARK_GAP = 2;
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
    mark.classList.toggle('is-asked', peg.isAsked);
    const number = document.createElement('span');
    number.textContent = peg.peg;
    link.append(number);
    const lead = document.createElement('i');
    mark.append(lead, link);
    const turn = (peg.facingDegrees * Math.PI) / 180;
    const offset = L.point(-BEHIND_PIXELS * Math.sin(turn), BEHIND_PIXELS * Math.cos(turn));
    const icon = L.divIcon({ className: 'live-peg', html: mark, iconSize: [0, 0] });
    L.marker(peg.at, { icon, interactive: false, keyboard: false, zIndexOffset: 1000 }).addTo(map);
    return { at: peg.at, element: link, lead, offset, radius: HALF_TARGET };
  });
}

/** Places as plates with a word; what helps in need comes first. */
export function placeMarks(map: L.Map, features: readonly Feature[]): readonly MapMark[] {
  return Object.entries(PLACE_WORDS).flatMap(([kind, words]) =>
    features.flatMap(({ geometry, properties }) => {
      if (properties?.kind !== kind || geometry.type !== 'Point') return [];
      const [lng = 0, lat = 0] = geometry.coordinates;
      const mark = document.createElement('span');
      const plate = document.createElement('b');
      plate.textContent = words;
      const lead = document.createElement('i');
      mark.append(lead, plate);
      const icon = L.divIcon({ className: `live-place live-${kind}`, html: mark, iconSize: [0, 0] });
      bindTextTooltip(L.marker([lat, lng], { icon, keyboard: false }).addTo(map), properties.name ?? words);
      return [
        {
          at: L.latLng(lat, lng),
          element: plate,
          lead,
          offset: L.point(0, 0),
          radius: HALF_RING + words.length * 3,
        },
      ];
    }),
  );
}

/** Shows every mark at every zoom: those that would hide one another part, as on the drawn map, and a lead tells whose each is. */
export function showMarks(map: L.Map, marks: readonly MapMark[]): void {
  const part = () => {
    const points = marks.map(({ at }) => map.latLngToLayerPoint(at));
    const homes = marks.map(({ offset, radius }, i) => {
      const { x, y } = points[i]!.add(offset);
      return { x, y, radius };
    });
    partMarks(homes, MARK_GAP).forEach(([x, y], i) => {
      const { element, lead } = marks[i]!;
      const [dx, dy] = [x - points[i]!.x, y - points[i]!.y];
      element.style.transform = `translate(${dx}px, ${dy}px)`;
      lead.style.width = `${Math.hypot(dx, dy)}px`;
      lead.style.transform = `rotate(${Math.atan2(dy, dx)}rad)`;
    });
  };
  map.on('zoomend', part);
  part();
}
