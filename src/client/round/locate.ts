import type { LatLng } from '../../domain/place.ts';

/** Where the phone is, and how sure it is of that. */
export interface Located {
  readonly at: LatLng;
  readonly accuracyMetres: number;
}

/** Asks the phone where it is; needs no signal. Returns a sentence where it does not say. */
export function locate(): Promise<Located | string> {
  if (!('geolocation' in navigator)) return Promise.resolve('This phone does not tell its position.');
  return new Promise((resolve) => {
    navigator.geolocation.getCurrentPosition(
      ({ coords }) =>
        resolve({
          // Six decimals are a tenth of a metre; more would only say which phone it was.
          at: { lat: Number(coords.latitude.toFixed(6)), lng: Number(coords.longitude.toFixed(6)) },
          accuracyMetres: coords.accuracy,
        }),
      (error) =>
        resolve(
          error.code === error.PERMISSION_DENIED
            ? 'The phone was told not to give its position to this page.'
            : 'No position yet. Step away from the trees and try again.',
        ),
      { enableHighAccuracy: true, timeout: 20_000, maximumAge: 5000 },
    );
  });
}
