import L from 'leaflet';
import type { MapPeg } from './map-marks.ts';

/** Farther than this from every peg nobody is at the water: the map stays where it is. */
const AT_WATER_METRES = 2000;
/** The map may be moved this far about a person who stands outside its bounds. */
const ROOM_METRES = 400;

/** Puts a button into the row kept free below the map: it asks the phone where it is, and says which peg is nearest. */
export function offerLocate(map: L.Map, frame: HTMLElement, pegs: readonly MapPeg[]): void {
  const row = frame.parentElement?.querySelector('.locate-row');
  if (!('geolocation' in navigator) || !row) return;
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = 'Where am I?';
  const said = document.createElement('span');
  said.setAttribute('role', 'status');
  row.append(button, said);

  const here = L.layerGroup().addTo(map);
  button.addEventListener('click', () => {
    said.textContent = 'Asking the phone …';
    map.locate({ enableHighAccuracy: true, timeout: 20_000 });
  });
  map.on('locationfound', ({ latlng, accuracy }) => {
    const nearest = nearestPeg(latlng, pegs);
    here.clearLayers();
    if (nearest === undefined || nearest.metres > AT_WATER_METRES) {
      said.textContent = 'You are more than 2 km from here.';
      return;
    }
    L.circle(latlng, { radius: accuracy, className: 'live-accuracy' }).addTo(here);
    L.circleMarker(latlng, { radius: 8, className: 'live-here' }).addTo(here);
    map.setMaxBounds(map.getBounds().extend(latlng.toBounds(ROOM_METRES)).pad(1));
    map.panTo(latlng);
    said.textContent = `Nearest: peg ${nearest.peg}, ${Math.round(nearest.metres)} m, give or take ${Math.round(accuracy)} m.`;
  });
  map.on('locationerror', () => {
    said.textContent =
      'The phone does not say where it is. Allow it in the settings, or go by the numbers on the posts.';
  });
}

function nearestPeg(
  here: L.LatLng,
  pegs: readonly MapPeg[],
): { readonly peg: string; readonly metres: number } | undefined {
  return pegs.map(({ peg, at }) => ({ peg, metres: here.distanceTo(at) })).sort((a, b) => a.metres - b.metres)[0];
}
