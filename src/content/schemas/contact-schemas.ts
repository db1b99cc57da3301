import * as z from 'zod';
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
      powerNumber: emergency['power-number'],
      pollutionNumber: emergency['pollution-number'],
      postcode: emergency.postcode,
      directions: emergency.directions,
      gateNote: emergency['gate-note'],
    }),
  ) satisfies z.ZodType<Emergency>;
