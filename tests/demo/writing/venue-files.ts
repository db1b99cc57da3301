import { holdsOn } from '../../../src/domain/dated.ts';
import { yearOf } from '../../../src/domain/day.ts';
import type { Water } from '../../../src/domain/map.ts';
import type { Notice } from '../../../src/domain/notice.ts';
import { pegKey } from '../../../src/domain/peg.ts';
import { numbersOf } from '../../../src/domain/stand.ts';
import type { Venue } from '../../../src/domain/venue.ts';
import { markdownFile } from './front-matter.ts';
import { eventsText, gaugeText, hoursText, type NumberOn, roundText, sessionsText, soundingsText } from './log-text.ts';
import { mapText } from './map-text.ts';
import { pegText } from './peg-text.ts';
import { settingsText } from './settings-text.ts';

/** The number that a stand's post carried on a day: what a sheet of that day says. */
function numbersOnDays({ pegs, retired = [] }: Venue): NumberOn {
  const stands = new Map([...pegs, ...retired].map((stand) => [pegKey(stand.water, stand.peg), numbersOf(stand)]));
  return (water, peg, day) => stands.get(pegKey(water, peg))?.find((spell) => holdsOn(spell, day))?.peg ?? peg;
}

/** Every text file of a venue's folder, by its path inside the folder. */
export function venueFiles(venue: Venue): Map<string, string> {
  const files = new Map<string, string>();
  // In format 2 every record states its stand's id.
  const format = venue.pegs.every(({ id }) => id !== undefined) ? 2 : undefined;
  files.set('venue.md', settingsText(venue.settings, format));
  const numberOn = numbersOnDays(venue);
  for (const water of venue.waters) {
    files.set(`waters/${water.id}.md`, waterText(water));
    files.set(`waters/${water.id}.geojson`, mapText(water));
  }
  for (const peg of [...venue.pegs, ...(venue.retired ?? [])]) files.set(peg.file, pegText(peg));
  for (const notice of venue.notices) files.set(`notices/${notice.id}.md`, noticeText(notice));
  for (const round of venue.rounds) files.set(round.file, roundText(round, numberOn));
  for (const [water, rows] of Map.groupBy(venue.soundings, (row) => row.water)) {
    files.set(`soundings/${water}.csv`, soundingsText(rows, numberOn));
  }
  for (const [water, rows] of Map.groupBy(venue.gauge, (row) => row.water)) {
    files.set(`gauge/${water}.csv`, gaugeText(rows));
  }
  addSessionFiles(files, venue);
  return files;
}

function addSessionFiles(files: Map<string, string>, venue: Venue): void {
  const sessionsByEvent = Map.groupBy(venue.sessions, (session) => session.event);
  for (const [year, events] of Map.groupBy(venue.events, (event) => yearOf(event.day))) {
    files.set(`sessions/${year}/events.csv`, eventsText(events));
    const sessions = events.flatMap((event) => sessionsByEvent.get(event.id) ?? []);
    files.set(`sessions/${year}/sessions.csv`, sessionsText(sessions, venue.settings.bagParts));
    const ids = new Set(events.map(({ id }) => id));
    const hours = (venue.hours ?? []).filter(({ event }) => ids.has(event));
    if (hours.length > 0) files.set(`sessions/${year}/hours.csv`, hoursText(hours));
  }
}

function waterText(water: Water): string {
  return markdownFile(
    {
      name: water.name,
      kind: water.kind,
      datum: water.datum,
      stocked: water.stocked?.map(({ on, what, kilograms }) => ({ on, what, kg: kilograms })),
      'close-season': water.closeSeason,
      access: water.access,
    },
    water.notesMarkdown,
  );
}

function noticeText(notice: Notice): string {
  return markdownFile(
    {
      title: notice.title,
      kind: notice.kind,
      from: notice.from,
      until: notice.until,
      'cancelled-on': notice.cancelledOn,
      'changed-on': notice.changedOn,
      replaces: notice.replaces,
      waters: notice.waters.length === 0 ? undefined : notice.waters,
      pegs: notice.pegs.length === 0 ? undefined : notice.pegs,
    },
    notice.markdown,
  );
}
