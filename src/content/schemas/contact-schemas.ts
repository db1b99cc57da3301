import * as z from 'zod';
import { SHIPPED_EMERGENCY } from '../../domain/shipped-settings.ts';
import type { Contact, Emergency } from '../../domain/venue.ts';
import { matching, text } from './fields.ts';
import { withoutUndefined } from './without-undefined.ts';

const phone = (description: string) =>
  matching(
    /^\+?[0-9][0-9 ()-]{1,24}$/,
    'phone',
    `${description}: figures and spaces`,
    'Write the number in figures, in quotes where it begins with 0.',
  );

/** Whom to ask, by role. */
export const ContactSchema = z
  .strictObject({
    role: text('a role, never a name: Bailiff'),
    phone: phone('a telephone number').exactOptional(),
    email: matching(
      /^[^\s@]+@[^\s@]+\.[^\s@]+$/,
      'email',
      'an e-mail address',
      'Write it as name@club.example.',
    ).exactOptional(),
  })
  .transform((contact) => withoutUndefined(contact)) satisfies z.ZodType<Contact>;

/** What stands in the emergency block of every page. */
export const EmergencySchema = z
  .strictObject(
    {
      number: phone('the emergency number'),
      'also-number': phone('a second emergency number').exactOptional(),
      'text-number': matching(
        /^(?:none|\+?[0-9][0-9 ]{1,24})$/,
        'text-number',
        'the number that takes emergency messages, or none',
        'Write the number in figures, or none where there is no such service.',
      ).exactOptional(),
      'nearest-town': text('the town a call handler will know').exactOptional(),
      'power-number': phone('the network operator’s emergency number').exactOptional(),
      'pollution-number': phone('the number for pollution').exactOptional(),
      postcode: text('postcode').exactOptional(),
      directions: text('one line for an ambulance').exactOptional(),
      'gate-note': text('what to say of locked gates').exactOptional(),
    },
    { error: 'the emergency block, at least { number: "999" }' },
  )
  .transform((emergency) =>
    withoutUndefined({
      number: emergency.number,
      alsoNumber: emergency['also-number'] ?? SHIPPED_EMERGENCY[emergency.number]?.alsoNumber,
      textNumber: textNumberOf(emergency['text-number'], emergency.number),
      nearestTown: emergency['nearest-town'],
      powerNumber: emergency['power-number'],
      pollutionNumber: emergency['pollution-number'],
      postcode: emergency.postcode,
      directions: emergency.directions,
      gateNote: emergency['gate-note'],
    }),
  ) satisfies z.ZodType<Emergency>;

function textNumberOf(written: string | undefined, number: string): string | undefined {
  return written === 'none' ? undefined : (written ?? SHIPPED_EMERGENCY[number]?.textNumber);
}
