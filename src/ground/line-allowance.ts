import type { OverheadLine } from '../domain/map.ts';
import type { StandOffRule } from '../domain/venue.ts';

/** What is taken off every mapped distance to an overhead line: half the width of its conductors, and the error of the map. */
export function lineAllowanceMetres(line: Pick<OverheadLine, 'conductorSpreadMetres'>, rule: StandOffRule): number {
  return (line.conductorSpreadMetres ?? rule.conductorSpreadMetres) / 2 + rule.mapErrorMetres;
}
