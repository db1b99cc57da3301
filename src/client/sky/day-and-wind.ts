import type { Units } from '../../domain/bag.ts';
import { COMPASS_POINTS } from '../../domain/compass.ts';
import { formatDay, isDay } from '../../domain/day.ts';
import { formatDistance } from '../../domain/place-words.ts';
import { sunDay, sunInFace } from '../../ground/sun-at-peg.ts';
import { windMeets } from '../../ground/wind-at-peg.ts';
import { localDay } from '../local-day.ts';

/** What the page says of the peg, so that the phone can work out a day without the map. */
interface PegSky {
  readonly at: { readonly lat: number; readonly lng: number };
  readonly facingDegrees: number;
  readonly timeZone: string;
  readonly units: Pick<Units, 'length'>;
  /** Open water crossed by a wind from each of the sixteen points, from north, clockwise. */
  readonly fetchMetres: readonly number[];
}

const MEETS_WORDS: Readonly<Record<ReturnType<typeof windMeets>, string>> = {
  face: 'is in your face',
  back: 'comes off your back',
  'across from the left': 'blows left to right',
  'across from the right': 'blows right to left',
};

/** Puts a day and a wind to choose into a place of the page, with an answer in words that follows them. */
export function askDayAndWind(place: HTMLElement): void {
  const sky = pegSky(place);
  const day = document.createElement('input');
  day.type = 'date';
  day.value = localDay(new Date());
  const wind = document.createElement('select');
  wind.add(new Option('not known', ''));
  COMPASS_POINTS.forEach((point, index) => {
    wind.add(new Option(point, String(index)));
  });
  const answer = document.createElement('output');
  const form = document.createElement('form');
  form.append(labelled('Day', day), labelled('Wind from', wind), answer);
  const update = () => {
    answer.textContent = [sunWords(sky, day.value), windWords(sky, wind.value)].filter(Boolean).join(' ');
  };
  form.addEventListener('input', update);
  form.addEventListener('submit', (event) => event.preventDefault());
  place.append(form);
  update();
  day.focus();
}

function pegSky({ dataset }: HTMLElement): PegSky {
  return {
    at: { lat: Number(dataset.lat), lng: Number(dataset.lng) },
    facingDegrees: Number(dataset.facing),
    timeZone: dataset.zone ?? 'UTC',
    units: { length: dataset.unit === 'ft' ? 'ft' : 'm' },
    fetchMetres: (dataset.fetch ?? '').split(',').map(Number),
  };
}

/** When the sun blinds over the float on a day: "21 Jun 2027: daylight 04:37 to 21:32; low over the float never." */
export function sunWords(sky: PegSky, day: string): string {
  if (!isDay(day)) return 'Choose a day.';
  const sun = sunDay(day, sky.at, sky.timeZone);
  const spells = sunInFace(sky.facingDegrees, sun).map(([from, to]) => `${from} to ${to}`);
  const daylight =
    sun.sunrise === null || sun.sunset === null ? 'the sun does not rise and set' : `${sun.sunrise} to ${sun.sunset}`;
  return `${formatDay(day)}: daylight ${daylight}; ${spells.length === 0 ? 'the sun is never low over the float' : `sun low over the float ${spells.join(', ')}`}.`;
}

/** How a wind meets the angler and what water it has crossed; nothing where no wind is chosen. */
export function windWords(sky: PegSky, pointIndex: string): string {
  if (pointIndex === '') return '';
  const index = Number(pointIndex);
  const fetch = formatDistance(sky.fetchMetres[index] ?? 0, sky.units);
  return `A wind from ${COMPASS_POINTS[index]} ${MEETS_WORDS[windMeets(sky.facingDegrees, index * 22.5)]}, over ${fetch} of open water.`;
}

function labelled(words: string, control: HTMLElement): HTMLLabelElement {
  const label = document.createElement('label');
  label.append(`${words} `, control);
  return label;
}
