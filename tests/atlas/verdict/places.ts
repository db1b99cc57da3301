import { parse } from 'csv-parse/sync';
import type { Atlas } from '../../../src/atlas/atlas.ts';
import { bankPieces } from '../../../src/atlas/bank-pieces.ts';
import { bankRoundPage } from '../../../src/atlas/bank-round-page.ts';
import { bookletIndex } from '../../../src/atlas/booklet-index.ts';
import { clearancePage } from '../../../src/atlas/clearance-page.ts';
import { comparePage } from '../../../src/atlas/compare-page.ts';
import { cutsDue } from '../../../src/atlas/cuts-due.ts';
import { drawData, drawPage } from '../../../src/atlas/draw-page.ts';
import { locatorSvg } from '../../../src/atlas/drawing/locator.ts';
import { mapSvg } from '../../../src/atlas/drawing/map-svg.ts';
import { dueCalendar, dueList } from '../../../src/atlas/due-list.ts';
import { featurePegs } from '../../../src/atlas/feature-pegs.ts';
import { hazardRegister } from '../../../src/atlas/hazard-register.ts';
import { homePage } from '../../../src/atlas/home-page.ts';
import { linePegs } from '../../../src/atlas/line-pegs.ts';
import { matchPage } from '../../../src/atlas/match-page.ts';
import { nearLinePegs } from '../../../src/atlas/near-line-pegs.ts';
import { nowFacts } from '../../../src/atlas/now-facts.ts';
import { pegData } from '../../../src/atlas/peg-data.ts';
import { pegLocators } from '../../../src/atlas/peg-locator.ts';
import { paperPegs } from '../../../src/atlas/peg-paper.ts';
import { pegPlaces } from '../../../src/atlas/peg-places.ts';
import { pegSheet } from '../../../src/atlas/peg-sheet.ts';
import { factsOfPeg, isClosedForEver, type PegStanding } from '../../../src/atlas/peg-verdicts.ts';
import { registerCsv } from '../../../src/atlas/register-csv.ts';
import { roundMapSvg } from '../../../src/atlas/round-map.ts';
import { roundSheet } from '../../../src/atlas/round-sheet.ts';
import { safetyPage } from '../../../src/atlas/safety-page.ts';
import { searchEntries } from '../../../src/atlas/search-entries.ts';
import { unrolledBank } from '../../../src/atlas/unrolled-bank.ts';
import { venueGeojson, waterGeojson } from '../../../src/atlas/venue-geojson.ts';
import { waterMap } from '../../../src/atlas/water-map.ts';
import { waterPage } from '../../../src/atlas/water-page.ts';
import type { Day } from '../../../src/domain/day.ts';
import type { Match } from '../../../src/domain/match.ts';
import { type Peg, pegKey } from '../../../src/domain/peg.ts';
import { type PegFacts, pegVerdict } from '../../../src/domain/peg-verdict.ts';
import { exampleMatch } from '../../domain/example-match.ts';

/** A place that shows a peg: its name, and whether it shows the peg as closed. */
type Shown = readonly [place: string, isClosed: boolean];

/** What a phone shows of an element on a day: the page as it was built, set right by the facts in it. */
function isShownClosed(
  standing: { readonly closed: unknown; readonly dated?: string | undefined },
  onDay: Day,
): boolean {
  if (standing.dated === undefined) return standing.closed !== null && standing.closed !== false;
  return pegVerdict(JSON.parse(standing.dated) as PegFacts, onDay).state === 'closed';
}

/** A match on every peg of a water, as somebody might have written it by hand. */
function matchOnAll(water: string, pegs: readonly Peg[]): Match {
  const keys = pegs.map(({ peg }) => pegKey(water, peg));
  const plan = [{ name: 'A', pegs: keys }];
  return exampleMatch({ id: '2026-12-06-all', name: 'All pegs', waters: [water], entries: keys.length, plan });
}

/** Whatever is drawn from an atlas alone is made once for all pegs and days. */
export function placesOf(atlas: Atlas, water: string) {
  const pegs = atlas.pegsByWater.get(water) ?? [];
  const pieceOf = bankPieces(atlas, water);
  const match = matchPage(atlas, matchOnAll(water, pegs), []);
  return {
    match,
    atlas,
    water,
    pegs,
    home: homePage(atlas).waters.find(({ id }) => id === water)!,
    table: waterPage(atlas, water),
    compared: comparePage(atlas, water).pegs,
    drawn: drawPage(atlas, water).pegs,
    drawData: drawData(atlas, water),
    paper: paperPegs(atlas, water, new URL('https://club.example')),
    // A number that is on no post any more is found as just that, as it has a page that says so.
    search: searchEntries(atlas).filter(({ kind }) => kind !== 'gone'),
    byFeature: featurePegs(atlas),
    booklet: bookletIndex(atlas).flatMap(({ entries }) => entries.flatMap(({ waters }) => waters)),
    map: waterMap(atlas, water),
    strips: unrolledBank(atlas, water).stretches.flatMap(({ tiles }) => tiles),
    heads: new Map(pegs.map(({ peg }) => [peg, pieceOf(pegKey(water, peg))])),
    maps: [mapSvg(waterMap(atlas, water)), roundMapSvg(atlas, water), ...match.maps.map(({ svg }) => svg)],
    sheets: new Map(pegs.map(({ peg }) => [peg, pegSheet(atlas, pegKey(water, peg))])),
    safety: safetyPage(atlas),
    round: bankRoundPage(atlas, water, new Map()),
    roundSheet: roundSheet(atlas, water),
    now: nowFacts(atlas),
    lines: linePegs(atlas).flatMap(({ rows }) => rows),
    nearLines: nearLinePegs(atlas),
    register: hazardRegister(atlas),
    csv: parse(registerCsv(hazardRegister(atlas)), { columns: true }) as readonly Record<string, string>[],
    due: dueList(atlas),
    calendar: dueCalendar(atlas, dueList(atlas), 'example', null),
    clearance: clearancePage(atlas, water),
    cuts: cutsDue(atlas),
    features: [...venueGeojson(atlas).features, ...waterGeojson(atlas, water).features],
    data: pegData(atlas),
    where: pegPlaces(atlas),
    locators: pegLocators(atlas, water),
  };
}

export type Places = ReturnType<typeof placesOf>;

/** A peg's notch in the bank unrolled, and the drawing that holds it. */
function notchOf({ strips }: Places, name: string): { readonly svg: string; readonly notch: string } {
  for (const svg of strips) {
    const notch = new RegExp(`<a class="b-peg[^>]*aria-label="Peg ${name}[",].*?</a>`).exec(svg)?.[0];
    if (notch !== undefined) return { svg, notch };
  }
  throw new Error(`The bank unrolled has no peg ${name}.`);
}

/** How a drawn notch stands: the class it is built with, and its facts. */
function ofNotch(notch: string): { readonly closed: boolean; readonly dated: string | undefined } {
  const dated = /^[^>]*data-verdict="([^"]*)"/.exec(notch)?.[1]?.replaceAll('&quot;', '"').replaceAll('&amp;', '&');
  return { closed: /^<\w+ class="b-(?:peg|here) b-closed/.test(notch), dated };
}

/** A peg's notches in the heads of sheets: the large one of its own, and those beside other pegs. */
function onHeads({ heads }: Places, name: string): readonly (readonly [place: string, notch: string])[] {
  const own = /<g class="b-here.*?<\/g>/.exec(heads.get(name)!)?.[0];
  if (own === undefined) throw new Error(`The head of peg ${name} has no notch of its own.`);
  const beside = [...heads.values()].flatMap((svg) => {
    const notch = new RegExp(`<a class="b-peg[^>]*aria-label="Peg ${name}[",].*?</a>`).exec(svg)?.[0];
    return notch === undefined ? [] : [['head of a neighbour', notch] as const];
  });
  return [['head of its sheet', own], ...beside];
}

/** Whether a dot of worth stands over a peg's notch. */
function isSoldOnStrip(places: Places, name: string): boolean {
  const { svg, notch } = notchOf(places, name);
  return svg.includes(`<circle cx="${/class="number" x="([^"]*)"/.exec(notch)![1]}"`);
}

/** Every place that shows how a peg stands, with what it shows on a day of reading. */
function shownOnDay(places: Places, { water, peg: name }: Peg, onDay: Day): readonly Shown[] {
  const { home, safety, register } = places;
  const waterName = places.table.name;
  const own = <T extends { readonly peg?: string; readonly standing: PegStanding | null }>(
    place: string,
    rows: readonly T[],
    called = name,
  ): readonly Shown[] =>
    rows
      .filter(({ peg, standing }) => peg === called && standing !== null)
      .map(({ standing }) => [place, isShownClosed(standing!, onDay)]);
  const inClosures = (groups: readonly { readonly names: readonly string[]; readonly standing: PegStanding }[]) =>
    groups.some(({ names, standing }) => names.includes(name) && isShownClosed(standing, onDay));
  const ofRegister = [...register.inForce, ...register.cleared, ...register.unsafePlatforms]
    .filter((row) => row.peg === name)
    .map(({ ofPeg }): Shown => ['register', isShownClosed(ofPeg!.standing, onDay)]);
  const byFacts = (place: string, facts: PegFacts): Shown => [place, pegVerdict(facts, onDay).state === 'closed'];
  const openFacts: PegFacts = { status: 'open', standOffMetres: 30 };
  return [
    ...own('home grid', home.pegs),
    ['home closures', inClosures(home.closures.map(({ pegs, standing }) => ({ names: pegs.split(', '), standing })))],
    ...own('table', places.table.pegs),
    ...own('side by side', places.compared),
    ...own('drawn', places.drawn),
    ...places.drawn.flatMap(({ neighbours }) => own('beside a drawn peg', neighbours)),
    ...own(
      'beside a sheet',
      [...places.sheets.values()].flatMap(({ closedBeside }) => closedBeside),
    ),
    ...own('card and plate', places.paper),
    ...places.search
      .filter(({ kind, peg }) => kind === 'peg' && peg?.water === waterName && peg.peg === name)
      .map(({ closed, dated }): Shown => ['search', isShownClosed({ closed: closed ?? null, dated }, onDay)]),
    ...own(
      'by feature',
      places.byFeature.flatMap(({ waters }) =>
        waters.filter((each) => each.name === waterName).flatMap((each) => each.pegs),
      ),
    ),
    ...own(
      'booklet',
      places.booklet.filter((each) => each.name === waterName).flatMap(({ pegs }) => pegs),
    ),
    ['map', isShownClosed(places.map.pegs.find((mark) => mark.peg === name)!, onDay)],
    ['bank unrolled', isShownClosed(ofNotch(notchOf(places, name).notch), onDay)],
    ...onHeads(places, name).map(([place, notch]): Shown => [place, isShownClosed(ofNotch(notch), onDay)]),
    ['sheet', isShownClosed(places.sheets.get(name)!.standing, onDay)],
    [
      'safety page',
      inClosures(safety.closed.map(({ pegs, standing }) => ({ names: pegs.map((each) => each.peg), standing }))),
    ],
    ...own(
      'hazard kinds',
      safety.hazards.flatMap(({ rows }) => rows.flatMap(({ pegs }) => pegs)),
    ),
    ...own('bank round', places.round.stops),
    ...own(
      'match',
      places.match.sections.flatMap(({ pegs }) => pegs),
    ),
    ...own('pegging out', places.match.walk.stops),
    ...own('tickets', places.match.bag),
    ...own('by line', places.lines, `${waterName} ${name}`),
    ...own('near a line', places.nearLines, `${waterName} ${name}`),
    ...ofRegister,
    ...own('due list', places.due),
    ...own('clearance', places.clearance.pegs),
    byFacts('now.json', places.now.pegs[pegKey(water, name)] ?? openFacts),
    ...places.where
      .filter((each) => each.water === waterName)
      .flatMap(({ pegs }) => pegs.filter(([peg]) => peg === name))
      .map(([, , , , mark]): Shown => ['where', isShownClosed(mark ?? { closed: false }, onDay)]),
    ...places.features
      .filter(({ properties }) => properties?.kind === 'peg' && properties.peg === name)
      .map(({ properties }) => byFacts('GeoJSON', properties!.facts)),
    ...places.data.filter((datum) => datum.peg === name).map(({ facts }) => byFacts('pegs.json', facts)),
  ];
}

/** Where a peg that is closed on every day is said to be worth something, or to give a bag. */
function soldWhileClosed(places: Places, { peg: name }: Peg): readonly string[] {
  const line = places.table.pegs.find(({ peg, standing }) => peg === name && isClosedForEver(standing));
  const beside = places.compared.find(({ peg, standing }) => peg === name && isClosedForEver(standing));
  return [
    ...(line !== undefined && line.order.worths !== null ? [`table sells peg ${name}`] : []),
    ...(line !== undefined && isSoldOnStrip(places, name) ? [`bank unrolled sells peg ${name}`] : []),
    ...(places.heads.get(name)!.includes('<circle') ? [`head of peg ${name} sells`] : []),
    ...(line !== undefined && Object.keys(places.drawData.pegs[name]!.bags).length > 0
      ? [`draw page sells peg ${name}`]
      : []),
    ...(places.paper.some(({ peg, standing, bag }) => peg === name && isClosedForEver(standing) && bag !== null)
      ? [`card sells peg ${name}`]
      : []),
    ...(beside !== undefined && beside.months.length > 0 ? [`side by side sells peg ${name}`] : []),
  ];
}

/** Every place that is printed, drawn or written for one day alone, that of the guide, with whether it says closed. */
function saidForGuideDay(places: Places, { water, peg: name }: Peg): readonly Shown[] {
  const row = places.roundSheet.rows.find(({ peg }) => peg === name);
  const waterName = places.table.name;
  return [
    ...places.paper
      .filter(({ peg }) => peg === name)
      .map(({ plateSigns }): Shown => ['plate', plateSigns.some(({ words }) => words.endsWith('Not to be fished.'))]),
    ['round sheet', row?.isClosed === true],
    ...places.data
      .filter(({ peg }) => peg === name)
      .map(({ status }): Shown => ['pegs.json, status', status === 'closed']),
    ...places.maps.map((svg): Shown => {
      const mark = new RegExp(`<a class="m-peg( m-closed)?"[^>]*aria-label="Peg ${name}[",]`).exec(svg);
      if (mark === null) throw new Error(`The map has no peg ${name}.`);
      return ['drawn map', mark[1] !== undefined];
    }),
    ...places.csv
      .filter((cells) => cells.peg === name)
      .map((cells): Shown => ['hazards.csv', cells.peg_state === 'closed' && cells.peg_closed_because !== '']),
    // The calendar says it for the day of each entry; no later day is more closed than the guide's in these checks.
    ...places.calendar
      .filter(({ uid, day }) => uid.includes(`/${water}/peg/${name}@`) && day <= places.atlas.venue.settings.guideDay)
      .map(({ description }): Shown => ['calendar', description.includes('The peg is closed')]),
    // A closed peg is in no list of pegs to cut; an open one need not be in it.
    ...places.cuts.filter((cut) => cut.name === `${waterName} ${name}`).map((): Shown => ['cuts due', false]),
  ];
}

/** How many of the other pegs the locator of one peg draws as closed. */
export function closedOnLocator(places: Places, peg: Peg): number {
  const drawn = locatorSvg(places.locators(peg));
  return (drawn.match(/<path class="l-peg"(?![^>]*display="none")/g) ?? []).length;
}

/** What is shown otherwise than the verdict on the peg says, on any of some days: nothing, where all is well. */
export function contradictions(places: Places, peg: Peg, days: readonly Day[]): readonly string[] {
  const facts = factsOfPeg(places.atlas, peg);
  const isClosed = (day: Day) => pegVerdict(facts, day).state === 'closed';
  const { guideDay } = places.atlas.venue.settings;
  const wrong = (shown: readonly Shown[], day: Day) =>
    shown
      .filter(([, closed]) => closed !== isClosed(day))
      .map(([place, closed]) => `${place} shows peg ${peg.peg} ${closed ? 'closed' : 'open'} on ${day}`);
  return [
    ...days.flatMap((day) => wrong(shownOnDay(places, peg, day), day)),
    ...wrong(saidForGuideDay(places, peg), guideDay),
    ...soldWhileClosed(places, peg),
  ];
}
