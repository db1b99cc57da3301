import { expect, test } from 'vitest';
import { messagesOf } from '../small-venue.ts';

const EVENT = '2026-05-02-mill-pond';
const HOURS = 'sessions/2026/hours.csv';
const withHours = (...rows: readonly string[]) =>
  messagesOf({ [HOURS]: `event,peg,hour,part,weight\n${rows.join('\n')}\n` });

test('accepts hours of a session, by parts or as a whole, also of less or some more than its bag', () => {
  expect(withHours(`${EVENT},1,1,carp,10-00`, `${EVENT},1,5,silvers,3-08`, `${EVENT},2,3,total,12-00`)).toEqual([]);
});

test('tells an unknown event, a peg without a session, an hour past the end and an unknown part, one fault each', () => {
  const faults = withHours(
    '2026-05-02-mil-pond,1,1,carp,1-00',
    `${EVENT},77,1,carp,1-00`,
    `${EVENT},1,6,carp,1-00`,
    `${EVENT},1,1,crap,1-00`,
  );
  expect(faults.map((fault) => /\(([a-z-]+)\)$/.exec(fault)?.[1])).toEqual([
    'event-unknown',
    'hours-session',
    'hour-range',
    'part-unknown',
  ]);
  expect(faults[0]).toContain(`${HOURS}:2:1 error`);
  expect(faults[2]).toContain('expected 1 to 5');
});

test('tells an hour written twice, and warns of hours that far outweigh the bag, with both figures', () => {
  expect(withHours(`${EVENT},1,1,carp,1-00`, `${EVENT},1,1,carp,2-00`)).toHaveLength(1);
  const [heavy] = withHours(`${EVENT},1,1,carp,40-00`, `${EVENT},1,2,carp,20-00`);
  expect(heavy).toContain('warning');
  expect(heavy).toContain('60 lb 0 oz');
  expect(heavy).toContain('23 lb 8 oz');
});

test('refuses an hour 0, a weight without form and a slip’s id with a blank in it', () => {
  expect(withHours(`${EVENT},1,0,carp,1-00`, `${EVENT},1,1,carp,heavy`)).toHaveLength(2);
  expect(messagesOf({ [HOURS]: `event,peg,slip,hour,part,weight\n${EVENT},1,J Smith,1,carp,1-00\n` })).toHaveLength(1);
});
