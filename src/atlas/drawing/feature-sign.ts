import { escapeMarkup, short } from './svg-markup.ts';

/** A feature as a strip of bank shows it. */
export interface FeatureSign {
  readonly id: string;
  readonly name: string;
}

/** Signs in a box of 14 by 14 about their middle, drawn as a plan or a section would show the thing itself. */
const SIGNS: Readonly<Record<string, string>> = {
  corner: 'M-5-5V5H5',
  margin: 'M-6-3H6M-6 3H6M-6-3V3',
  point: 'M-6 5L0-5L6 5',
  bay: 'M-6-5C-6 7 6 7 6-5',
  island: 'M-6 0a6 4 0 1 0 12 0a6 4 0 1 0-12 0z',
  'open-water': 'M-6-2q3-4 6 0t6 0M-6 3q3-4 6 0t6 0',
  reeds: 'M-4 6V-2M0 6V-6M4 6V-1',
  lilies: 'M-6-1a3 3 0 1 0 6 0a3 3 0 1 0-6 0M0 3a3 3 0 1 0 6 0a3 3 0 1 0-6 0',
  overhang: 'M0 6V-1M-6-1a6 5 0 0 1 12 0z',
  inlet: 'M0-6V5M-4 1L0 5L4 1',
  aerator: 'M-6 0H6M0-6V6M-4-4L4 4M-4 4L4-4',
  'deep-water': 'M-6-5H6M0-5V2M-2 2h4v4h-4z',
  'near-shelf': 'M-6-4H-1V4H6',
};

/** The sign of a feature about a place; a feature of a venue's own has the first two letters of its name. */
export function featureSign({ id, name }: FeatureSign, x: number, y: number): string {
  const sign = SIGNS[id];
  if (sign === undefined)
    return `<text class="sign" x="${short(x)}" y="${short(y + 4)}">${escapeMarkup([...name].slice(0, 2).join(''))}</text>`;
  return `<path class="sign" transform="translate(${short(x)} ${short(y)})" d="${sign}"/>`;
}
