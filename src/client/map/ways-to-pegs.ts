import type { Feature, Position } from 'geojson';
import L from 'leaflet';
import { WAY_UNDER_LINE_ACTION, walkWords } from '../../atlas/peg-bank.ts';
import type { Units } from '../../domain/bag.ts';
import type { MapPath } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import type { LineToPass } from '../../ground/walk/lines-near.ts';
import { type Way, walkOf, wayFinder } from '../../ground/walk/way-between.ts';
import { chooser, labelled, make } from '../make.ts';
import type { MapPeg } from './map-marks.ts';

/** A place that ways begin at. */
interface Start {
  readonly name: string;
  readonly at: LatLng;
}

/** A way, or in words why there is none. */
export interface ToldWay {
  readonly way: Way | null;
  readonly words: string;
}

/** Finds and tells the ways to pegs from the data of a map: from where somebody stands, else from the car parks, else from the gates. */
export function waysToPegs(
  features: readonly Feature[],
  units: Units,
): (peg: Pick<MapPeg, 'peg' | 'at' | 'bankSteps' | 'name'>, standing: LatLng | null) => ToldWay {
  const paths = features.flatMap(pathOf);
  const lines = linesOf(features);
  const find = wayFinder(paths, lines);
  const carParks = startsOf(features, 'car-park');
  const entries = carParks.length > 0 ? carParks : startsOf(features, 'gate');
  const findings = features.filter(({ properties }) => properties?.kind === 'finding');
  return ({ peg, name, at, bankSteps }, standing) => {
    const starts = standing === null ? entries : [{ name: 'where you stand', at: standing }];
    const ways = starts.flatMap((start) => {
      const way = find(start.at, at);
      return way === null ? [] : [{ way, start }];
    });
    // One clear of every line first, as on the peg's sheet; of those the shortest.
    const [best] = ways.sort(
      (a, b) =>
        Number(a.way.facts.lines.length > 0) - Number(b.way.facts.lines.length > 0) || a.way.metres - b.way.metres,
    );
    if (best === undefined) {
      const from = standing === null ? (entries[0]?.name ?? 'a gate or car park') : 'where you stand';
      return { way: null, words: `No mapped path leads from ${from} to peg ${peg}: go by the map, and ask.` };
    }
    const { way, start } = best;
    const walk = walkOf(way, start.name, bankSteps, lines);
    const found = findings
      .filter(({ properties }) => way.paths.some(({ id }) => id === properties?.mappedAs))
      .map(({ properties }) => String(properties?.name));
    return {
      way,
      words: [
        `${name}, from ${start.name}: ${walkWords(walk, units)}.`,
        ...(walk.underLines.length === 0
          ? []
          : [`Passes an overhead line (${walk.underLines.join(', ')}). ${WAY_UNDER_LINE_ACTION}`]),
        ...(found.length === 0 ? [] : [`Found on the way: ${found.join('; ')}.`]),
      ].join(' '),
    };
  };
}

/** Puts a choice of peg beside the map: the way to it is drawn and told. */
export function offerWays(
  map: L.Map,
  row: Element,
  pegs: readonly MapPeg[],
  tell: ReturnType<typeof waysToPegs>,
  asked: string | null,
): { readonly peg: () => string | null; readonly stand: (at: LatLng) => void } {
  const options = pegs.map(({ peg, closed }) => [peg, closed ? `${peg}, closed` : peg] as const);
  const select = chooser([['', 'choose'], ...options]);
  const said = make('span', { className: 'way-said' });
  said.setAttribute('role', 'status');
  row.append(labelled('Way to peg', select), said);
  const drawn = L.layerGroup().addTo(map);
  let standing: LatLng | null = null;
  const show = () => {
    drawn.clearLayers();
    const peg = pegs.find((each) => each.peg === select.value);
    if (peg === undefined) {
      said.textContent = '';
      return;
    }
    const { way, words } = tell(peg, standing);
    said.textContent = words;
    if (way === null) return;
    // A pale band below the dashes: the way is told from a path by more than its colour.
    L.polyline([...way.points], { className: 'live-way-band', interactive: false }).addTo(drawn);
    const line = L.polyline([...way.points], { className: 'live-way', interactive: false }).addTo(drawn);
    map.setMaxBounds(map.getBounds().extend(line.getBounds()).pad(1));
    map.fitBounds(line.getBounds(), { padding: [40, 40], maxZoom: 19 });
  };
  select.addEventListener('change', show);
  if (asked !== null && pegs.some(({ peg }) => peg === asked)) {
    select.value = asked;
    show();
  }
  return {
    peg: () => (select.value === '' ? asked : select.value),
    stand: (at) => {
      standing = at;
      show();
    },
  };
}

/** GeoJSON has the longitude first (RFC 7946, 3.1.1). */
function placeAt([lng = 0, lat = 0]: Position): LatLng {
  return { lat, lng };
}

function pathOf({ geometry, properties }: Feature): readonly MapPath[] {
  if (properties?.kind !== 'path' || geometry.type !== 'LineString') return [];
  const { mappedAs, steps, gradient, widthM, stepFree } = properties;
  return [
    {
      id: String(mappedAs),
      line: geometry.coordinates.map(placeAt),
      ...(typeof steps === 'number' ? { steps } : {}),
      ...(typeof gradient === 'number' ? { gradient } : {}),
      ...(typeof widthM === 'number' ? { widthMetres: widthM } : {}),
      ...(typeof stepFree === 'boolean' ? { stepFree } : {}),
    },
  ];
}

function linesOf(features: readonly Feature[]): readonly LineToPass[] {
  const zones = features.filter(({ properties }) => properties?.kind === 'stand-off-zone');
  const lines = features.filter(({ properties }) => properties?.kind === 'overhead-line');
  return lines.flatMap(({ geometry, properties }, i) => {
    if (geometry.type !== 'LineString') return [];
    const line = geometry.coordinates.map(placeAt);
    // Line and zone are written side by side.
    return [{ name: String(properties?.name), line, withinMetres: Number(zones[i]?.properties?.fromCentreM) }];
  });
}

function startsOf(features: readonly Feature[], kind: string): readonly Start[] {
  return features.flatMap(({ geometry, properties }) => {
    if (properties?.kind !== kind || geometry.type !== 'Point') return [];
    return [{ name: String(properties.name), at: placeAt(geometry.coordinates) }];
  });
}
