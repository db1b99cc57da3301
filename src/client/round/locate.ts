import type { Fix } from '../../content/round-file/round-file.ts';

/** A fix less good than this is not kept unless the bailiff asks for it: pegs stand ten to twenty metres apart. */
const MAX_ACCURACY_METRES = 30;

/** Where the phone is, how sure it is of that, and when. */
export interface Located {
  readonly at: Fix & { readonly accuracyMetres: number };
  /** Milliseconds since 1970, as the position says. */
  readonly takenAt: number;
}

/** Asks the phone where it is; needs no signal. Returns a sentence where it does not say. */
export function locate(): Promise<Located | string> {
  if (!('geolocation' in navigator)) return Promise.resolve('This phone does not tell its position.');
  return new Promise((resolve) => {
    navigator.geolocation.getCurrentPosition(
      ({ coords, timestamp }) =>
        resolve({
          // Six decimals are a tenth of a metre; more would only say which phone it was.
          at: {
            lat: Number(coords.latitude.toFixed(6)),
            lng: Number(coords.longitude.toFixed(6)),
            accuracyMetres: Math.min(100_000, Math.max(1, Math.round(coords.accuracy))),
          },
          takenAt: timestamp,
        }),
      (error) =>
        resolve(
          error.code === error.PERMISSION_DENIED
            ? 'The phone was told not to give its position to this page. Nothing was kept; say in words where it is.'
            : 'No position yet. Step away from the trees and try again. Nothing was kept.',
        ),
      { enableHighAccuracy: true, timeout: 20_000, maximumAge: 5000 },
    );
  });
}

/** Whether a fix is good enough to be kept unasked. */
export function isGoodFix({ accuracyMetres }: Fix): boolean {
  return accuracyMetres !== undefined && accuracyMetres <= MAX_ACCURACY_METRES;
}

/** How good a kept fix is: "Position kept: 52.75126, -0.05481, good to some 8 m." */
export function fixWords({ lat, lng, accuracyMetres }: Fix): string {
  const accuracy =
    accuracyMetres === undefined ? 'how good it is was not said' : `good to some ${metres(accuracyMetres)}`;
  return `Position kept: ${lat.toFixed(5)}, ${lng.toFixed(5)}, ${accuracy}.`;
}

/** Why a fix is not kept. */
export function poorFixWords({ accuracyMetres }: Fix): string {
  return `The phone’s position is good to ${metres(accuracyMetres ?? Number.POSITIVE_INFINITY)} only, so it was not kept: ${MAX_ACCURACY_METRES} m is the most. Step into the open and try again.`;
}

function metres(value: number): string {
  return Number.isFinite(value) ? `${Math.round(value).toLocaleString('en-GB')} m` : 'nobody knows what';
}
