import * as z from 'zod';
import { addressField } from './address-field.ts';
import { text, yesNo } from './fields.ts';
import { withoutUndefined } from './without-undefined.ts';

/** The front matter of `association.md`, which stands above the venue folders of an association. */
export const AssociationSchema = z
  .strictObject({
    name: text('the name of the association'),
    address: addressField('where the guides of all venues will be published').exactOptional(),
    'shared-anglers': yesNo('whether one person is one reference in the logs of all venues').exactOptional(),
  })
  .transform(({ name, address, 'shared-anglers': shared }) =>
    withoutUndefined({ name, address, sharesAnglers: shared ?? false }),
  );
