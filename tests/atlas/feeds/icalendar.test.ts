import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { iCalendar } from '../../../src/atlas/feeds/icalendar.ts';

const text = iCalendar('Inspection rounds, Pit; north', '2026-11-21', [
  {
    uid: 'hazards-pit-2026-12-31',
    day: '2026-12-31',
    summary: 'Check 3 hazards, Pit; and a very long line of words that has to be folded – ½ m, café, naïve, 🐟🐟🐟🐟🐟',
    description: 'Peg 1\nPeg 2, the steep bank',
    url: 'https://club.example/guide/due/',
  },
]);

describe('an iCalendar file', () => {
  // RFC 5545; read back by an independent parser.
  it('is read back by another program with every word intact', () => {
    const calendar = new ICAL.Component(ICAL.parse(text));
    const event = new ICAL.Event(calendar.getFirstSubcomponent('vevent') as ICAL.Component);
    expect(event.summary).toContain('Pit; and a very long line');
    expect(event.summary).toContain('🐟🐟🐟🐟🐟');
    expect(event.description).toBe('Peg 1\nPeg 2, the steep bank');
    expect(event.startDate.toString()).toBe('2026-12-31');
    expect(event.endDate.toString()).toBe('2027-01-01');
  });

  it('folds every line at 75 octets and ends each with CRLF (RFC 5545, 3.1)', () => {
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('rings at nine on the day before (RFC 5545, 3.6.6)', () => {
    const calendar = new ICAL.Component(ICAL.parse(text));
    const alarm = calendar.getFirstSubcomponent('vevent')?.getFirstSubcomponent('valarm');
    expect(alarm?.getFirstPropertyValue('action')).toBe('DISPLAY');
    expect(alarm?.getFirstPropertyValue('trigger')?.toString()).toBe('-PT15H');
    expect(alarm?.getFirstPropertyValue('description')).toContain('Check 3 hazards');
  });

  it('has no clock: the stamp is the day of the data', () => {
    expect(text).toContain('DTSTAMP:20261121T000000Z');
  });
});
