import { type SafetySentence, says } from './safety-text.ts';

/** A caution before any cut, under a short word. */
export interface ClearingCaution extends SafetySentence {
  readonly about: string;
}

/** What stands before any cutting or clearing. The law is England's; all of it defers to local codes. */
export const CLEARING_TEXTS: readonly ClearingCaution[] = [
  { about: 'Who', ...says('Only with the club’s say. Nobody brings a saw to a match.', 'practice') },
  {
    about: 'Nests',
    ...says(
      'Look first, on the day: a nest in use or being built is protected in any month. Where one is found, stop, and never write down or publish where it is.',
      'nests',
    ),
  },
  { about: 'Months', ...says('This club keeps off altogether from {nesting-months}.', 'nesting-months') },
  {
    about: 'Protected trees',
    ...says(
      'A tree under a preservation order needs the council’s consent, roots too; one in a conservation area six weeks’ notice from a trunk of 75 mm at 1.5 m up. Unknown counts as protected: ask the council first.',
      'protected-trees',
    ),
  },
  {
    about: 'Special sites',
    ...says('On a site of special scientific interest listed work needs written consent.', 'special-interest'),
  },
  {
    about: 'Lines',
    ...says(
      'Where a peg is marked “near a line”, ask the network operator before any work, and leave what has grown near the wires to them.',
      'lines-at-work',
    ),
  },
  {
    about: 'Machines',
    ...says(
      'Saws, strimmers and winches for trained people with the certificate and protection the work asks for.',
      'chainsaws',
    ),
  },
  {
    about: 'Herbicide',
    ...says('Near water only with the regulator’s agreement and a qualified user.', 'herbicide'),
  },
  {
    about: 'What is cut',
    ...says('Stacked clear of the path or taken away, and never left in the water.', 'waste'),
  },
];

/** Who comes before all of them. */
export const CLEARING_DEFERS: SafetySentence = says(
  'This is the law of England in short; Scotland, Wales and Northern Ireland differ. Local codes, site rules and licensed practice come before it.',
  'practice',
);
