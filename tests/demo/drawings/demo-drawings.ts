import { type PegKey, pegKey } from '../../../src/domain/peg.ts';
import type { Chance } from '../chance.ts';
import type { WaterGround } from '../make-venue.ts';
import { type PegDrawing, sectionDrawing } from './section-drawing.ts';
import { swimSketch } from './swim-sketch.ts';

/** Pegs drawn as a section, with how far out in metres. */
const SECTIONS: Readonly<Record<PegKey, number>> = {
  'kiln-pool/4': 22,
  'kiln-pool/9': 22,
  'kiln-pool/21': 22,
  'kiln-pool/26': 46,
  'kiln-pool/31': 20,
  'eelback/7': 22,
  'eelback/14': 22,
  'eelback/27': 24,
  'tallyman-lake/5': 20,
  'tallyman-lake/22': 20,
};

/** Pegs sketched from above. */
const SKETCHES: readonly PegKey[] = [
  'kiln-pool/9',
  'kiln-pool/19',
  'kiln-pool/22',
  'eelback/7',
  'eelback/18',
  'eelback/23',
  'eelback/28',
  'tallyman-lake/23',
];

/** A drawing with the file it is kept in, below `photos/`. */
export interface FiledDrawing extends PegDrawing {
  readonly peg: PegKey;
  readonly file: string;
}

/** Draws the demo's pictures: sections and sketches of some pegs, made from the same ground as everything else. */
export function demoDrawings(ground: readonly WaterGround[], chance: Chance): FiledDrawing[] {
  return ground.flatMap(({ water, stands }) =>
    stands.flatMap((stand): FiledDrawing[] => {
      const peg = pegKey(water.id, stand.peg);
      const name = `${water.id}-${stand.peg}`;
      const out = SECTIONS[peg];
      return [
        ...(out === undefined
          ? []
          : [
              {
                peg,
                file: `${name}-section.svg`,
                ...sectionDrawing(water, stand, out, chance.apart(`section ${peg}`)),
              },
            ]),
        ...(SKETCHES.includes(peg)
          ? [{ peg, file: `${name}-sketch.svg`, ...swimSketch(water, stand, chance.apart(`sketch ${peg}`)) }]
          : []),
      ];
    }),
  );
}
