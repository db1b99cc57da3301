import { parsed } from '../../domain/parsed.ts';
import { parseSiteAddress } from '../../domain/site-address.ts';
import { fieldOf } from './fields.ts';

/** Where a guide will be published, kept as it is written. */
export function addressField(description: string) {
  return fieldOf(
    (written) => {
      const address = parseSiteAddress(written);
      return address.ok ? parsed(written) : address;
    },
    { description },
  );
}
