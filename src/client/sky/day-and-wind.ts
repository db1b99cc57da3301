import type { Units } from '../../domain/bag.ts';
import { COMPASS_POINTS } from '../../domain/compass.ts';
import { formatDay, isDay, monthOf } from '../../domain/day.ts';
import { formatDistance } from '../../domain/place-words.ts';
import { type FetchWorth, isWarmMonth, windGroup, worthAtFetch } from '../../domain/wind-worth.ts';
import { sunDay, sunInFace } from '../../ground/sun-at-peg.ts';
import { windMeets } from '../../ground/wind-at-peg.ts';
import { dayFault } from '../chosen-day.ts';
import { chooser, labelled, make } from '../make.ts';
import { readDays } from '../read-days.ts';
import { chooseDay } from '../units/units-form.ts';

/** What the page says of the peg, so that the phone can work out a day without the map. */
interface PegSky {
  readonly at: { readonly lat: number; readonly lng: number };
  readonly facingDegrees: number;
  readonly timeZone: string;
  readonly units: Pick<Units, 'length'>;
  /** Open water crossed by a wind from each of the sixteen points, from north, clockwise. */
  readonly fetchMetres: readonly number[];
  /** What a wind is worth by its open water, where the log told it. */
  readonly worths: Readonly<Record<string, readonly FetchWorth[]>> | null;
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
  const [today, chosen = today] = readDays();
  const day = make('input', { type: 'date', value: chosen });
  // A day that the guide can be read for is kept for every page, as at its foot; another is answered here alone.
  day.addEventListener('change', () => {
    const isToday = day.value === today;
    if (isToday || dayFault(day.value, today) === null) chooseDay(isToday ? null : day.value);
  });
  const points = COMPASS_POINTS.map((point, index) => [String(index), point] as const);
  const wind = chooser([['', 'not known'], ...points]);
  const strength = chooser([
    ['light', 'up to force 3 (12 mph)'],
    ['fresh', 'force 4 and over'],
  ]);
  const answer = make('output');
  const form = make('form', {}, labelled('Day', day), labelled('Wind from', wind));
  if (sky.worths !== null) form.append(labelled('Strength', strength));
  form.append(answer);
  const update = () => {
    const told = [
      sunWords(sky, day.value),
      windWords(sky, wind.value),
      windWorthWords(sky, { day: day.value, pointIndex: wind.value, isFresh: strength.value === 'fresh' }),
    ];
    answer.textContent = told.filter(Boolean).join(' ');
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
    worths: dataset.worth === undefined ? null : (JSON.parse(dataset.worth) as PegSky['worths']),
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

/** By what a wind multiplies the expected bags here; nothing where no wind is chosen, or the log told nothing of such a wind. */
export function windWorthWords(
  { worths, fetchMetres }: Pick<PegSky, 'worths' | 'fetchMetres'>,
  { day, pointIndex, isFresh }: { readonly day: string; readonly pointIndex: string; readonly isFresh: boolean },
): string {
  if (worths === null || pointIndex === '' || !isDay(day)) return '';
  const curve = worths[windGroup(isFresh, isWarmMonth(monthOf(day)))] ?? [];
  const known = worthAtFetch(curve, fetchMetres[Number(pointIndex)] ?? 0);
  if (known === null) return 'The log tells nothing of what such a wind is worth.';
  const [worth, low, high] = [known.worth, known.low80, known.high80].map((value) => value.toFixed(2));
  return `Multiply the expected bags by ${worth} (likely ${low} to ${high}): what that much open water is worth in such a wind.`;
}
