import type { Units } from '../../domain/bag.ts';
import { byMeasure } from '../../domain/clearance-measures.ts';
import { length } from './measures.ts';
import { named } from './record-schema.ts';

/** The measures of a peg's clearance as a record writes them. */
export const clearanceFields = (units: Units) =>
  byMeasure(({ key, field, about, maxMetres }) => [key, named(field, length(units, about, maxMetres).exactOptional())]);

/** The same as columns of a round: those every round has, or the others. */
export const clearanceColumns = (units: Units, inEveryRound: boolean) =>
  byMeasure(
    ({ column, field, about, maxMetres }) => [column, named(field, length(units, about, maxMetres).exactOptional())],
    ({ isInEveryRound }) => isInEveryRound === inEveryRound,
  );
