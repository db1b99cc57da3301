import { addDays, type Day, daysBetween, monthOf } from '../../../src/domain/day.ts';
import type { EventKind, Listing } from '../../../src/domain/session.ts';
import type { Chance } from '../chance.ts';

/** An event before anyone has drawn. */
export interface PlannedEvent {
  readonly day: Day;
  readonly water: string;
  readonly kind: EventKind;
  readonly listing: Listing;
  /** Whether the pegs of those not listed are known. */
  readonly drawKnown: boolean;
  /** Share of the open pegs that will be drawn, 0 to 1. */
  readonly fieldShare: number;
}

/** How the events of a log are spread. */
export interface CalendarPlan {
  readonly firstDay: Day;
  readonly lastDay: Day;
  readonly events: number;
  readonly waters: readonly string[];
  /** Share of events on chosen pegs. */
  readonly chosenShare: number;
  readonly frameOnlyShare: number;
  readonly fieldShare: readonly [low: number, high: number];
}

/** Events by month of the year: matches thin out in the cold. */
const MONTH_WEIGHTS = [0.75, 0.75, 0.85, 1, 1.05, 1.1, 1.1, 1.2, 1.1, 1, 0.9, 0.75] as const;

/** Plans events over a span of days, at most one a day on one water, in order of time. */
export function planEvents(plan: CalendarPlan, chance: Chance): PlannedEvent[] {
  const span = daysBetween(plan.firstDay, plan.lastDay) + 1;
  const slots: { day: Day; water: string; key: number }[] = [];
  for (let i = 0; i < span; i++) {
    const day = addDays(plan.firstDay, i);
    const weight = MONTH_WEIGHTS[monthOf(day) - 1]! * weekdayWeight(day);
    for (const water of plan.waters) slots.push({ day, water, key: Math.log(chance.uniform()) / weight });
  }
  if (slots.length < plan.events) {
    throw new RangeError(`${plan.events} events do not fit into ${span} days on ${plan.waters.length} waters`);
  }
  return slots
    .sort((a, b) => b.key - a.key)
    .slice(0, plan.events)
    .sort((a, b) => (a.day === b.day ? a.water.localeCompare(b.water, 'en') : a.day < b.day ? -1 : 1))
    .map(({ day, water }) => {
      const isChosen = chance.happens(plan.chosenShare);
      const isFrameOnly = !isChosen && chance.happens(plan.frameOnlyShare);
      return {
        day,
        water,
        kind: isChosen ? (chance.happens(0.7) ? 'pleasure' : 'practice') : 'match',
        listing: isFrameOnly ? 'frame' : 'full',
        drawKnown: !isFrameOnly || chance.happens(0.5),
        fieldShare: chance.between(...plan.fieldShare) * (isChosen ? 0.4 : 1),
      };
    });
}

/** Most matches are on Saturdays and Sundays, some on Wednesdays. */
function weekdayWeight(day: Day): number {
  // 3 January 2021 was a Sunday.
  const weekday = ((daysBetween('2021-01-03', day) % 7) + 7) % 7;
  return weekday === 0 || weekday === 6 ? 1 : weekday === 3 ? 0.35 : 0.03;
}
