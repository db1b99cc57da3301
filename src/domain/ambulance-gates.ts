import type { MapPlace } from './map.ts';

/** The gates an ambulance may come in by, in the three ways that decide which one to name. */
export interface AmbulanceGates {
  /** Never locked. */
  readonly open: readonly MapPlace[];
  /** Open by day: those never locked, and those locked at night only. */
  readonly openByDay: readonly MapPlace[];
  /** Kept locked, or nobody has recorded whether they are: never named before one that is known to be open. */
  readonly shut: readonly MapPlace[];
}

/**
 * Sorts gates by how an ambulance gets in. A gate that the map calls closed to vehicles is none of them; where no gate is
 * said to let one in, those that say nothing stand in.
 */
export function ambulanceGates(gates: readonly MapPlace[]): AmbulanceGates {
  const said = gates.filter((gate) => letsAmbulanceIn(gate) === true);
  const candidates = said.length > 0 ? said : gates.filter((gate) => letsAmbulanceIn(gate) === undefined);
  const open = candidates.filter(({ locked }) => locked === 'no');
  const openByDay = candidates.filter(({ locked }) => locked === 'no' || locked === 'night');
  return { open, openByDay, shut: candidates.filter((gate) => !openByDay.includes(gate)) };
}

/** Whether an ambulance can drive in; undefined where the map does not say. */
function letsAmbulanceIn({ ambulance, vehicles }: MapPlace): boolean | undefined {
  return ambulance ?? vehicles;
}
