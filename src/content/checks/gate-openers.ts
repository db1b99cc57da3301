import type { MapPlace } from '../../domain/map.ts';
import type { Content } from '../content.ts';
import { didYouMean } from '../did-you-mean.ts';
import type { Fault } from '../fault.ts';
import { faultAt } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/**
 * A gate that vehicles use says when it is locked, and one that is locked says who opens it: a role of the contacts that has
 * a number. Where that is missing the emergency block says "not known", so each is a warning.
 */
export function checkGateOpeners({ waters, settings }: Content): readonly Fault[] {
  const phones = settings.contacts.filter(({ phone }) => phone !== undefined).map(({ role }) => role);
  const isKnown = (role: string) => phones.some((known) => known.toLowerCase() === role.trim().toLowerCase());
  return waters.flatMap(({ map }) => {
    if (map === null) return [];
    return map.map.places.flatMap((gate) => {
      const wrong = gate.kind === 'gate' ? gateFault(gate, phones, isKnown) : null;
      if (wrong === null) return [];
      const { field, ...fault } = wrong;
      return [{ ...faultAt(map.source, map.pathOf(gate), { ...fault, severity: 'warning' }), field }];
    });
  });
}

function gateFault(gate: MapPlace, phones: readonly string[], isKnown: (role: string) => boolean) {
  const { name, vehicles, ambulance, locked, openedBy } = gate;
  if (openedBy !== undefined && !isKnown(openedBy)) {
    return {
      field: 'opened_by',
      rule: 'gate-opener',
      found: `${shown(openedBy)} at ${name}`,
      expected: 'a role of the contacts in venue.md that has a phone number',
      mend: didYouMean(openedBy, phones, 'Add the role and its number to the contacts.'),
    };
  }
  if (locked === undefined && (ambulance ?? vehicles) === true) {
    return {
      field: 'locked',
      rule: 'gate-locked',
      found: `${name} without a word on locking`,
      expected: 'locked: no, night or always',
      mend: 'Add it: until then the emergency block says that it is not known.',
    };
  }
  if (locked !== undefined && locked !== 'no' && openedBy === undefined) {
    return {
      field: 'opened_by',
      rule: 'gate-opener',
      found: `${name}, locked, without anyone to open it`,
      expected: 'opened_by with a role of the contacts in venue.md',
      mend: 'Add the role that holds the key or the code.',
    };
  }
  return null;
}
