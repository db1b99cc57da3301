import { ambulanceGates } from '../../domain/ambulance-gates.ts';
import type { MapPlace } from '../../domain/map.ts';
import type { LatLng } from '../../domain/place.ts';
import type { GatesOfPeg, NearbyPlace } from '../survey.ts';

type Nearest = (candidates: readonly MapPlace[]) => (from: LatLng) => NearbyPlace | null;

/**
 * Finds by which gate an ambulance comes to a position: the nearest that can be driven through and is open by day, never a
 * nearer one that is locked; that one is named beside it, since somebody may be able to open it.
 */
export function gatesOfPeg(gates: readonly MapPlace[], nearest: Nearest): (from: LatLng) => GatesOfPeg {
  const { open, openByDay, shut } = ambulanceGates(gates);
  const nearestOpen = nearest(open);
  const nearestByDay = nearest(openByDay);
  const nearestShut = nearest(shut);
  return (from) => {
    const byDay = nearestByDay(from);
    const locked = nearestShut(from);
    if (byDay === null) return { best: locked, atNight: null, lockedNearer: null };
    return {
      best: byDay,
      atNight: byDay.place.locked === 'night' ? nearestOpen(from) : null,
      lockedNearer: locked !== null && metresTo(locked) < metresTo(byDay) ? locked : null,
    };
  };
}

function metresTo({ walkMetres, distanceMetres }: NearbyPlace): number {
  return walkMetres ?? distanceMetres;
}
