import type { Feature, FeatureCollection } from 'geojson';
import L from 'leaflet';
// As addresses, not imports: a style sheet of this page would be paid for by everyone who never sees the live map.
import leafletStyles from 'leaflet/dist/leaflet.css?url';
import { isobathWords } from '../../atlas/isobath-words.ts';
import type { Day } from '../../domain/day.ts';
import { type PegFacts, verdictOnDays } from '../../domain/peg-verdict.ts';
import { pegLabel } from '../../domain/verdict-words.ts';
import ownStyles from '../../styles/live-map.css?url';
import { readDays } from '../read-days.ts';
import { unitsOfReader } from '../units/chosen-units.ts';
import { askedPeg } from './asked-peg.ts';
import { depthFigures } from './depth-figures.ts';
import { addMapButtons } from './map-buttons.ts';
import { type MapPeg, pegMarks, placeMarks, showMarks } from './map-marks.ts';
import { bindTextTooltip } from './text-tooltip.ts';
import { offerWays, waysToPegs } from './ways-to-pegs.ts';
import { locator } from './where-i-am.ts';

/** Pixels about the water. */
const AROUND: L.FitBoundsOptions = { paddingTopLeft: [30, 40], paddingBottomRight: [30, 30] };

/** Kinds drawn as they are, from the ground up; what is not named here is a place or a peg. */
const SHAPES = [
  'stand-off-zone',
  'outline',
  'reeds',
  'lilies',
  'trees',
  'snag',
  'building',
  'isobath',
  'path',
  'overhead-line',
];

/** What the buttons beside a live map ask of it. */
export interface LiveMap {
  /** Asks the phone where it is, and says so. */
  readonly locate: () => Promise<void>;
}

/**
 * Lays a movable map over the drawn one, from the same data as the published file; what it has to say goes into `said`.
 * Rejects where the data cannot be read.
 */
export async function showLiveMap(frame: HTMLElement, said: HTMLElement): Promise<LiveMap> {
  const answer = await fetch(frame.dataset.mapSource ?? '');
  if (!answer.ok) throw new Error(`the map's data answered ${answer.status}`);
  const { features } = (await answer.json()) as FeatureCollection;
  await Promise.all([leafletStyles, ownStyles].map(styled));
  const holder = document.createElement('div');
  holder.className = 'live-map';
  holder.setAttribute('role', 'group');
  holder.setAttribute('aria-label', `${frame.dataset.map ?? 'Map'}: arrow keys move it, plus and minus zoom`);
  // The drawn map keeps its place for the printer; on the screen the live one takes exactly its room.
  holder.style.height = `${frame.clientHeight}px`;
  frame.append(holder);
  frame.classList.add('is-live');

  const map = L.map(holder, {
    attributionControl: false,
    zoomSnap: 0,
    maxZoom: 22,
    scrollWheelZoom: false,
    // Buttons of our own stand in place of the library's.
    zoomControl: false,
  });
  map.on('focus', () => map.scrollWheelZoom.enable());
  map.on('blur', () => map.scrollWheelZoom.disable());
  const units = unitsOfReader();
  const lengthUnit = units.length;
  L.control.scale({ position: 'topleft', imperial: lengthUnit === 'ft', metric: lengthUnit === 'm' }).addTo(map);

  const outline = L.geoJSON(features.filter(({ properties }) => properties?.kind === 'outline'));
  const asked = askedPeg(location.hash);
  const pegs = pegsOf(features, readDays(), closedOnDrawnMap(frame), asked);
  const bounds = pegs.reduce((all, { at }) => all.extend(at), outline.getBounds());
  const showWhole = () => map.fitBounds(bounds, AROUND);
  showWhole();
  map.setMaxBounds(bounds.pad(1.5));
  for (const kind of SHAPES) drawShapes(map, features, kind, lengthUnit);
  showMarks(map, [...pegMarks(map, pegs), ...placeMarks(map, features)]);
  depthFigures(map, features, lengthUnit);
  const row = said.parentElement ?? frame;
  addMapButtons(map, row, showWhole);
  const north = document.createElement('span');
  north.className = 'live-north';
  north.textContent = 'N ↑';
  holder.append(north);
  const there = pegs.find(({ isAsked }) => isAsked);
  if (there !== undefined) map.panTo(there.at, { animate: false });
  const ways = offerWays(map, row, pegs, waysToPegs(features, units), asked);
  // What has closed since the map's data were made is marked on it as on the rest of the page.
  document.dispatchEvent(new Event('pegs-shown'));
  holder.focus({ preventScroll: true });
  return { locate: locator(map, { said, pegs, lengthUnit, asked: ways.peg, stand: ways.stand }) };
}

/** Sheets of pegs that the drawn map shows as closed: the live one never shows them open, whatever copy its data are of. */
function closedOnDrawnMap(frame: HTMLElement): ReadonlySet<string> {
  const links = frame.querySelectorAll('svg a.m-closed');
  return new Set([...links].map((link) => link.getAttribute('href') ?? ''));
}

/** Adds a style sheet and waits for it. */
function styled(address: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const link = document.createElement('link');
    link.rel = 'stylesheet';
    link.addEventListener('load', () => resolve());
    link.addEventListener('error', () => reject(new Error(`${address} did not load`)));
    link.href = address;
    document.head.append(link);
  });
}

function drawShapes(map: L.Map, features: readonly Feature[], kind: string, unit: 'm' | 'ft'): void {
  for (const feature of features.filter(({ properties }) => properties?.kind === kind)) {
    const shape = L.geoJSON(feature, { style: { className: `live-${kind}`, fill: kind !== 'isobath' } }).addTo(map);
    const words = wordsOf(feature, unit);
    if (words !== '') bindTextTooltip(shape, words, { sticky: true });
    // A listener for the focus makes a stop of the tab key out of a shape, and one without a name.
    shape.eachLayer((layer) => (layer as L.Path).getElement()?.setAttribute('tabindex', '-1'));
  }
}

function wordsOf({ properties }: Feature, unit: 'm' | 'ft'): string {
  if (properties?.kind === 'isobath') return `${isobathWords(Number(properties.depthM), unit)} deep`;
  if (properties?.kind === 'stand-off-zone') return `${properties.name}: no fishing inside`;
  return properties?.kind === 'outline' ? '' : (properties?.name ?? '');
}

/** Pegs as they stand on the days read for: the data may be older than those, or than the page. */
function pegsOf(
  features: readonly Feature[],
  days: readonly [Day, ...Day[]],
  closedSheets: ReadonlySet<string>,
  asked: string | null,
): readonly MapPeg[] {
  return features.flatMap(({ geometry, properties }) => {
    if (properties?.kind !== 'peg' || geometry.type !== 'Point') return [];
    const [lng = 0, lat = 0] = geometry.coordinates;
    const verdict = verdictOnDays(properties.facts as PegFacts, days);
    return [
      {
        peg: String(properties.peg),
        name: pegLabel(String(properties.peg), verdict),
        sheet: String(properties.sheet),
        closed: verdict.state === 'closed' || closedSheets.has(String(properties.sheet)),
        at: L.latLng(lat, lng),
        facingDegrees: Number(properties.facing),
        bankSteps: Number(properties.bankSteps ?? 0),
        isAsked: String(properties.peg) === asked,
      },
    ];
  });
}
