import type { Fix } from './where-words.ts';

/** Why no fix came, by the code of the browser's own error (Geolocation, W3C: 1 denied, 2 unavailable, 3 too late). */
const WHY: Readonly<Record<number, string>> = {
  1: 'The phone may not tell this guide where it is: allow it in the settings of the browser',
  2: 'The phone does not know where it is: try again under open sky',
  3: 'The phone found no place in time: try again under open sky',
};

/** Asks the phone where it is: a fix, or in words why there is none. */
export function askFix(): Promise<Fix | string> {
  return new Promise((resolve) => {
    if (!('geolocation' in navigator)) return resolve(withoutFix('This browser does not tell where it is'));
    navigator.geolocation.getCurrentPosition(
      ({ coords: { latitude, longitude, accuracy } }) =>
        resolve({ at: { lat: latitude, lng: longitude }, accuracyMetres: accuracy }),
      ({ code }) => resolve(withoutFix(WHY[code] ?? WHY[2]!)),
      { enableHighAccuracy: true, timeout: 20_000 },
    );
  });
}

function withoutFix(why: string): string {
  return `${why}. Go by the numbers on the posts; each peg’s sheet has its grid reference to read out.`;
}
