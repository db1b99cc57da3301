import type { SimulationOptions } from '../demo/simulate-from-model.ts';

/** One kind of log to simulate many venues of. */
export interface Kind {
  readonly name: string;
  readonly options: Partial<SimulationOptions>;
}

const DNW_BY = ['mostly low', 'anybody', 'lowest', 'line'] as const;

/** The kinds of log whose worths are held against the truth they were drawn from. */
export const KINDS: readonly Kind[] = [
  { name: 'ordinary', options: {} },
  ...[0.08, 0.2].flatMap((dnwShare) =>
    DNW_BY.map((dnwBy) => ({ name: `dnw ${100 * dnwShare}% ${dnwBy}`, options: { dnwShare, dnwBy } })),
  ),
  ...(['anybody', 'lowest', 'line'] as const).map((dnwBy) => ({
    name: `dnw 12 of 20 ${dnwBy}`,
    options: { dnwShare: 0.6, dnwBy, field: 20 },
  })),
  { name: 'pegs that change', options: { pegYear: 0.2 } },
  { name: 'smooth seasons', options: { seasons: 'wave' } },
  { name: 'rough seasons', options: { seasons: 'rough' } },
  { name: 't tails', options: { tails: 4 } },
  { name: 'one season', options: { firstDay: '2025-11-22', events: 45 } },
  { name: 'eight events', options: { events: 8 } },
  {
    name: 'wide ranges',
    options: { sd: { event: 1.2, angler: 0.6, peg: 0.4, feature: 0.3, featureMonth: 0.5, residual: 1 } },
  },
  { name: 'two-humped parts', options: { isTwoHumped: true } },
  { name: 'lilies cut half-way', options: { isCut: true } },
  { name: 'stocking that doubles', options: { stocking: Math.log(2) } },
  { name: 'room and wind', options: { field: 20, room: 0.4, wind: 0.3, depth: 0.4, colour: 0.4 } },
  { name: 'room and wind that do nothing', options: { field: 20, wind: 0, depth: 0, colour: 0 } },
  { name: 'levels that drift', options: { waterYear: 0.3 } },
];
