import { formatDay } from '../domain/day.ts';
import { isCurrent, type PlaceHazard } from '../domain/hazard.ts';
import type { Water } from '../domain/map.ts';
import { hazardKind } from '../domain/risk.ts';
import { escapeXml, type FeedEntry } from './feeds/atom.ts';
import { placeOnWater } from './place-on-water.ts';

/**
 * What was found at no peg, as entries of the notices' feed: each changes when it is found worse, when something is done
 * about it and when it is cleared, and not when somebody merely looks at it.
 * @param absolute the full address of a path of the guide
 */
export function findingEntries(waters: readonly Water[], absolute: (path: string) => string): readonly FeedEntry[] {
  return waters.flatMap((water) =>
    (water.hazards ?? []).map((hazard) => {
      const { name, advice } = hazardKind(hazard.kind);
      const where = `${placeOnWater(water, hazard.mappedAs)}: ${hazard.place}`;
      const cleared = hazard.clearedOn === undefined ? '' : `; cleared on ${formatDay(hazard.clearedOn)}`;
      return {
        id: idOf(water, hazard),
        title: `${isCurrent(hazard) ? '' : 'Cleared. '}${name}, ${where}`,
        url: absolute(`${water.id}/`),
        changedOn: changedOn(hazard),
        html: `<p>${escapeXml(`Found ${formatDay(hazard.foundOn)}${cleared}. ${hazard.action ?? advice}`)}</p>`,
      };
    }),
  );
}

function changedOn({ foundOn, worsenedOn, controlledOn, clearedOn }: PlaceHazard): string {
  return (
    [foundOn, worsenedOn, controlledOn, clearedOn]
      .filter((day) => day !== undefined)
      .sort()
      .at(-1) ?? foundOn
  );
}

/** The same as long as the record names the same hazard. */
function idOf({ id }: Water, { kind, place, mappedAs, foundOn }: PlaceHazard): string {
  const word = (text: string) => text.toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return ['found', foundOn, id, word(mappedAs ?? ''), kind, word(place)].filter((part) => part !== '').join('-');
}
