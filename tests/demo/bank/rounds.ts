import type { Month } from '../../../src/domain/day.ts';
import type { Hazard } from '../../../src/domain/hazard.ts';
import type { Peg } from '../../../src/domain/peg.ts';
import type { BankRound, RoundEntry } from '../../../src/domain/round.ts';
import type { Chance } from '../chance.ts';
import type { Weather } from '../log/weather.ts';
import type { BankCalendar, RoundDay } from './bank-calendar.ts';
import { type ClearingDay, growAndCut } from './clearing.ts';

/** Walks all rounds over the pegs: the rounds' rows, and the pegs with the clearance last measured. */
export function walkRounds(
  pegs: readonly Peg[],
  calendar: BankCalendar,
  nestingMonths: readonly Month[],
  weather: Weather,
  chance: Chance,
): { readonly rounds: BankRound[]; readonly pegs: Peg[] } {
  const visits = pegs.map((peg) => {
    const days = calendar.rounds
      .filter((round) => !calendar.isPassedOver(round, peg.water, peg.peg))
      .map((round) => round.day);
    return { peg, clearings: growAndCut(peg, days, nestingMonths, chance.apart(peg.file)) };
  });
  const rounds = calendar.rounds.map((round) => ({
    ref: round.ref,
    day: round.day,
    entries: [
      ...[...new Set(pegs.map((peg) => peg.water))].map((water) => gaugeRow(water, round, weather)),
      ...visits.flatMap(({ peg, clearings }) => {
        const found = clearings.find((clearing) => clearing.day === round.day);
        return found === undefined ? [] : visitRows(peg, round, found);
      }),
    ],
    file: `rounds/${round.day}-${round.ref}.csv`,
  }));
  return {
    rounds,
    pegs: visits.map(({ peg, clearings }) => ({ ...peg, clearance: clearings[clearings.length - 1]!.clearance })),
  };
}

function gaugeRow(water: string, round: RoundDay, weather: Weather): RoundEntry {
  const today = weather.on(round.day, water);
  return { entry: 'gauge', water, levelMetres: today.levelMetres, waterDegreesC: today.waterDegreesC };
}

function visitRows(peg: Peg, round: RoundDay, clearing: ClearingDay): RoundEntry[] {
  const here = { water: peg.water, peg: peg.peg };
  const isClosed = peg.status === 'closed' && round.day >= (peg.statusSince ?? '');
  const { measuredOn: _measuredOn, ...measured } = clearing.clearance;
  const condition = peg.platform?.condition;
  return [
    {
      entry: 'visit',
      ...here,
      status: isClosed ? 'closed' : 'open',
      ...(condition === undefined ? {} : { platform: condition }),
    },
    ...peg.hazards.flatMap((hazard) => hazardRows(hazard, here, round)),
    ...(peg.measuredLineDistance?.measuredOn === round.day
      ? [
          {
            entry: 'line-distance' as const,
            ...here,
            lineDistanceMetres: peg.measuredLineDistance.distanceMetres,
            note: peg.measuredLineDistance.method,
          },
        ]
      : []),
    { entry: clearing.cut ? 'cut' : 'clearance', ...here, ...measured },
  ];
}

function hazardRows(
  hazard: Hazard,
  here: { readonly water: string; readonly peg: string },
  round: RoundDay,
): RoundEntry[] {
  const named = { ...here, hazard: hazard.kind, place: hazard.place };
  if (hazard.clearedOn === round.day) return [{ entry: 'hazard-cleared', ...named }];
  if (hazard.foundOn === round.day) {
    return [
      {
        entry: 'hazard-found',
        ...named,
        ...(hazard.action === undefined ? {} : { action: hazard.action }),
        severity: hazard.severity,
        likelihood: hazard.likelihood,
      },
    ];
  }
  const isStanding = hazard.foundOn < round.day && (hazard.clearedOn === undefined || hazard.clearedOn > round.day);
  return isStanding && (hazard.checkedOn ?? '') >= round.day ? [{ entry: 'hazard-checked', ...named }] : [];
}
