import type { Peg } from '../domain/peg.ts';
import { hazardKind } from '../domain/risk.ts';
import { sayIn } from '../words/say.ts';
import type { Atlas } from './atlas.ts';
import { hazardRegister, type RegisterRow } from './hazard-register.ts';
import { type PegMention, pegMention } from './peg-mention.ts';
import { pegSafety } from './peg-safety.ts';
import { waterLink } from './site-link.ts';

/** A word of the index with what it is about, water by water. */
interface IndexEntry {
  readonly name: string;
  readonly waters: readonly {
    readonly name: string;
    readonly href: string;
    /** None where the word is about the water and no peg of its own. */
    readonly pegs: readonly PegMention[];
  }[];
}

/** A part of the index. */
export interface IndexPart {
  readonly id: 'Pegs' | 'Hazards' | 'Features';
  readonly title: string;
  readonly entries: readonly IndexEntry[];
}

/** Of every warning of an overhead line (ISO 7010). */
const LINE_SIGN = 'W012';

/** Every peg by its water, by the hazards its sheet warns of, and by its features; words in the order of the alphabet. */
export function bookletIndex(atlas: Atlas): readonly IndexPart[] {
  const { features, waters } = { ...atlas.venue, ...atlas.venue.settings };
  const say = sayIn(atlas.venue.settings.language);
  const pegs = waters.flatMap(({ id }) => atlas.pegsByWater.get(id) ?? []);
  const having = (feature: string) => pegs.filter((peg) => peg.features.includes(feature));
  const byFeature = features.map(({ id, name }) => indexEntry(atlas, name, having(id), new Set()));
  return [
    {
      id: 'Pegs',
      title: say('booklet.pegs'),
      entries: waters.map(({ id, name }) =>
        indexEntry(
          atlas,
          name,
          pegs.filter(({ water }) => water === id),
          new Set(),
        ),
      ),
    },
    { id: 'Hazards', title: say('booklet.hazards'), entries: inOrder(byHazard(atlas, pegs)) },
    { id: 'Features', title: say('booklet.features'), entries: inOrder(byFeature) },
  ];
}

/** The current hazards of the register with its unsafe platforms; pegs whose sheet warns of a line on the map stand with those that have one on record. */
function byHazard(atlas: Atlas, pegs: readonly Peg[]): readonly IndexEntry[] {
  const { inForce, unsafePlatforms } = hazardRegister(atlas);
  const known: readonly Pick<RegisterRow, 'kind' | 'water' | 'peg'>[] = [...inForce, ...unsafePlatforms];
  const line = hazardKind('overhead-line').name;
  const names = new Set([...known.map(({ kind }) => kind.name), line]);
  return [...names].map((name) => {
    const rows = known.filter(({ kind }) => kind.name === name);
    const isOf = (peg: Peg) =>
      rows.some((row) => row.water === peg.water && row.peg === peg.peg) ||
      (name === line && pegSafety(atlas, peg).some(({ sign }) => sign === LINE_SIGN));
    const whole = new Set(rows.filter(({ peg }) => peg === undefined).map(({ water }) => water));
    return indexEntry(atlas, name, pegs.filter(isOf), whole);
  });
}

function indexEntry(atlas: Atlas, name: string, pegs: readonly Peg[], wholeWaters: ReadonlySet<string>): IndexEntry {
  const waters = atlas.venue.waters.map((water) => ({
    name: water.name,
    href: waterLink(water.id),
    isWhole: wholeWaters.has(water.id),
    pegs: pegs.filter((peg) => peg.water === water.id).map((peg) => pegMention(atlas, peg)),
  }));
  return { name, waters: waters.filter((water) => water.isWhole || water.pegs.length > 0) };
}

function inOrder(entries: readonly IndexEntry[]): readonly IndexEntry[] {
  return entries
    .filter(({ waters }) => waters.length > 0)
    .sort((one, other) => one.name.localeCompare(other.name, 'en'));
}
