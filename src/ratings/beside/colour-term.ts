import { WATER_COLOURS, type WaterColour } from '../../domain/session.ts';
import type { ModelSession } from '../sessions-in-model.ts';
import type { BesideMaker } from './beside-term.ts';
import { meanSteps, nearestKnot, stepsAt } from './broken-stick.ts';
import { groundOfSession } from './session-ground.ts';

/** Depths down the edge, in metres below datum, at which the curve may bend. */
const EDGE_KNOTS_METRES = [0.3, 0.6, 0.9, 1.2, 1.8] as const;
const STEPS = EDGE_KNOTS_METRES.length - 1;
const WORDS: Readonly<Record<WaterColour, string>> = {
  clear: 'clear water',
  tinged: 'tinged water',
  coloured: 'coloured water',
};

/**
 * The depth down the edge, a curve for each colour of the water: how clear it is moves fish in and out, which a match's anglers
 * meet at pegs of different edges. What an edge is worth whatever the colour, the pegs' own worth holds.
 */
export const colourTerm: BesideMaker = (venue, sessions) => {
  const colours = new Set(sessions.flatMap(({ event }) => event.conditions.waterColour ?? []));
  if (colours.size < 2) return { of: 'colour', why: 'one-colour' };
  const groundOf = groundOfSession(venue);
  const told = (session: ModelSession) => {
    const colour = session.event.conditions.waterColour;
    const depth = groundOf(session)?.depths?.atMarginMetres ?? null;
    return colour === undefined || depth === null ? null : { colour, depth };
  };
  const depths = sessions.flatMap((session) => told(session)?.depth ?? []);
  if (new Set(depths).size < 2) return { of: 'colour', why: 'no-margin-plumbed' };
  const middle = meanSteps(EDGE_KNOTS_METRES, depths);
  const weightsAt = (colour: WaterColour, depth: number) => {
    const steps = stepsAt(EDGE_KNOTS_METRES, depth).map((step, k) => step - middle[k]!);
    return WATER_COLOURS.flatMap((each) => (each === colour ? steps : new Array<number>(STEPS).fill(0)));
  };
  return {
    of: 'colour',
    term: {
      of: 'colour',
      columns: WATER_COLOURS.length * STEPS,
      weightsOf: (session) => {
        const known = told(session);
        return known === null ? null : weightsAt(known.colour, known.depth);
      },
      curves: WATER_COLOURS.map((colour) => ({
        group: WORDS[colour],
        points: EDGE_KNOTS_METRES.map((at) => ({ at, weights: weightsAt(colour, at) })),
        pointOf: (session) => {
          const known = told(session);
          return known?.colour === colour ? nearestKnot(EDGE_KNOTS_METRES, known.depth) : null;
        },
      })),
    },
  };
};
