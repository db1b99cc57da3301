import L from 'leaflet';
import type { MapPeg } from './map-marks.ts';

/** Puts a button into the row kept free below the map: it asks the phone where it is, and says which peg is nearest. */
export function offerLocate(map: L.Map, frame: HTMLElement, pegs: readonly MapPeg[]): void {
  if (!('geolocation' in navigator)) return;
  const row = frame.parentElement?.querySelector('.locate-row');
  if (!row) return;
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
    here.clearLayers();
    L.circle(latlng, { radius: accuracy, className: 'live-accuracy' }).addTo(here);
    L.circleMarker(latlng, { radius: 8, className: 'live-here' }).addTo(here);
    map.setMaxBounds(map.options.maxBounds ? L.latLngBounds([latlng]).extend(map.getBounds()) : latlng.toBounds(500));
    map.panTo(latlng);
    said.textContent = whereWords(latlng, accuracy, pegs);
  });
  map.on('locationerror', () => {
    said.textContent =
      'The phone does not say where it is. Allow it in the settings, or go by the numbers on the posts.';
  });
}

/** "Nearest: peg 23, 14 m, give or take 8 m." */
function whereWords(here: L.LatLng, accuracyMetres: number, pegs: readonly MapPeg[]): string {
  const byDistance = pegs
    .map(({ peg, at }) => ({ peg, metres: here.distanceTo(at) }))
    .sort((a, b) => a.metres - b.metres);
  const [nearest] = byDistance;
  if (nearest === undefined) return '';
  if (nearest.metres > 2000) return 'You are more than 2 km from here.';
  return `Nearest: peg ${nearest.peg}, ${Math.round(nearest.metres)} m, give or take ${Math.round(accuracyMetres)} m.`;
}
