import L from 'leaflet';
import type { MapPeg } from './map-marks.ts';
import { whereWords } from './where-words.ts';

/** The map may be moved this far about a person who stands outside its bounds. */
const ROOM_METRES = 400;

/** What there is to be told about where somebody is. */
export interface Whereabouts {
  readonly said: HTMLElement;
  readonly pegs: readonly MapPeg[];
  readonly lengthUnit: 'm' | 'ft';
  /** The peg the reader came for. */
  readonly asked: string | null;
}

/** Gives a function that asks the phone where it is and says so; the map shows it where the fix is good and at the water. */
export function locator(map: L.Map, { said, pegs, lengthUnit, asked }: Whereabouts): () => void {
  const here = L.layerGroup().addTo(map);
  map.on('locationfound', ({ latlng, accuracy }) => {
    const where = whereWords({ at: latlng, accuracyMetres: accuracy }, pegs, { length: lengthUnit }, asked);
    here.clearLayers();
    said.textContent = where.said;
    if (!where.isShown) return;
    L.circle(latlng, { radius: accuracy, className: 'live-accuracy', interactive: false }).addTo(here);
    L.circleMarker(latlng, { radius: 8, className: 'live-here', interactive: false }).addTo(here);
    map.setMaxBounds(map.getBounds().extend(latlng.toBounds(ROOM_METRES)).pad(1));
    map.panTo(latlng);
  });
  map.on('locationerror', () => {
    said.textContent =
      'The phone does not say where it is. Allow it in the settings, or go by the numbers on the posts.';
  });
  return () => {
    said.textContent = 'Asking the phone …';
    map.locate({ enableHighAccuracy: true, timeout: 20_000 });
  };
}
