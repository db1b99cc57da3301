import type { Feature, Position } from 'geojson';
import L from 'leaflet';
import { isobathWords } from '../../atlas/isobath-words.ts';
import { figurePlaces, type Pixel } from './figure-places.ts';

/** Depths on their contours, each in the middle of its longest line; where that is out of sight, wherever its contour is in sight. */
export function depthFigures(map: L.Map, features: readonly Feature[], unit: 'm' | 'ft'): void {
  const contours = features.flatMap(({ geometry, properties }) => {
    if (properties?.kind !== 'isobath') return [];
    const lines = linesOf(geometry).map((line) => line.map(([lng = 0, lat = 0]) => L.latLng(lat, lng)));
    const longest = [...lines].sort((a, b) => b.length - a.length)[0] ?? [];
    const home = longest[Math.floor(longest.length / 2)];
    if (home === undefined) return [];
    const figure = document.createElement('span');
    figure.textContent = isobathWords(Number(properties.depthM), unit);
    const icon = L.divIcon({ className: 'live-depth', html: figure, iconSize: [0, 0] });
    const marker = L.marker(home, { icon, interactive: false, keyboard: false }).addTo(map);
    return [{ lines, home, marker }];
  });
  const place = () => {
    const pixel = (at: L.LatLng): Pixel => {
      const { x, y } = map.latLngToContainerPoint(at);
      return [x, y];
    };
    const seen = contours.map(({ lines, home }) => ({
      home: pixel(home),
      lines: lines.map((line) => line.map(pixel)),
    }));
    const { x, y } = map.getSize();
    figurePlaces(seen, [x, y]).forEach((at, i) => {
      const { marker, home } = contours[i]!;
      const isAtHome = at === seen[i]!.home;
      marker.setLatLng(isAtHome ? home : map.containerPointToLatLng(L.point(at[0], at[1])));
    });
  };
  map.on('moveend', place);
  place();
}

function linesOf(geometry: Feature['geometry']): readonly Position[][] {
  if (geometry.type === 'MultiLineString') return geometry.coordinates;
  return geometry.type === 'LineString' ? [geometry.coordinates] : [];
}
