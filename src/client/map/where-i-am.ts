import L from 'leaflet';
import type { LatLng } from '../../domain/place.ts';
import { askFix } from '../where/ask-fix.ts';
import { whereWords } from '../where/where-words.ts';
import type { MapPeg } from './map-marks.ts';

/** The map may be moved this far about a person who stands outside its bounds. */
const ROOM_METRES = 400;

/** What there is to be told about where somebody is. */
export interface Whereabouts {
  readonly said: HTMLElement;
  readonly pegs: readonly MapPeg[];
  readonly lengthUnit: 'm' | 'ft';
  /** The peg the reader wants to come to. */
  readonly asked: () => string | null;
  /** Told of a place that is sure enough to start from. */
  readonly stand: (at: LatLng) => void;
}

/** Gives a function that asks the phone where it is and says so; the map shows it where the fix is good and at the water. */
export function locator(map: L.Map, { said, pegs, lengthUnit, asked, stand }: Whereabouts): () => Promise<void> {
  const here = L.layerGroup().addTo(map);
  return async () => {
    said.textContent = 'Asking the phone …';
    const fix = await askFix();
    here.clearLayers();
    if (typeof fix === 'string') {
      said.textContent = fix;
      return;
    }
    const { at, accuracyMetres } = fix;
    const where = whereWords(fix, pegs, { length: lengthUnit }, asked());
    said.textContent = where.said;
    if (!where.isShown) return;
    L.circle(at, { radius: accuracyMetres, className: 'live-accuracy', interactive: false }).addTo(here);
    L.circleMarker(at, { radius: 8, className: 'live-here', interactive: false }).addTo(here);
    map.setMaxBounds(map.getBounds().extend(L.latLng(at).toBounds(ROOM_METRES)).pad(1));
    map.panTo(at);
    stand(at);
  };
}
