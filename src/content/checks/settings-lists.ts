import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { faultAt, type Source } from '../sources/source.ts';
import { shown } from '../sources/text-place.ts';

/** Names in the lists of `venue.md` are each used once, and the bands of the risk matrix begin at 1 and rise. */
export function checkSettingsLists({ settings, settingsSource: source }: Content): readonly Fault[] {
  if (source === null) return [];
  const bands = source.writtenAt(['risk-bands']) === undefined ? [] : settings.riskBands;
  return [
    ...doubles(source, 'bag-parts', settings.bagParts),
    ...doubles(source, 'features', settings.features),
    ...doubles(source, 'thresholds', ownThresholds(source)),
    ...standOffThreshold(source, settings.standOff.metres),
    ...bands.flatMap((band, index) => {
      const before = bands[index - 1];
      const least = before === undefined ? 1 : before.from + 1;
      const isRight = before === undefined ? band.from === 1 : band.from >= least;
      if (isRight) return [];
      return [
        faultAt(source, ['risk-bands', index, 'from'], {
          rule: 'risk-bands',
          found: String(band.from),
          expected:
            before === undefined ? '1 for the first band' : `more than ${before.from}, where the band before begins`,
          mend: 'Order the bands from the lowest score, the first from 1.',
        }),
      ];
    }),
  ];
}

interface OwnThreshold {
  readonly id: string;
  readonly value: string;
  readonly unit: string;
}

/** The thresholds the venue writes itself, as written: those it leaves out are the shipped ones. */
function ownThresholds(source: Source): readonly OwnThreshold[] {
  const own: OwnThreshold[] = [];
  for (let index = 0; source.writtenAt(['thresholds', index]) !== undefined; index++) {
    const written = (field: string) => source.writtenAt(['thresholds', index, field]) ?? '';
    own.push({ id: written('id'), value: written('value'), unit: written('unit') });
  }
  return own;
}

/** A figure printed beside the rule must be the one the gate goes by. */
function standOffThreshold(source: Source, metres: number): readonly Fault[] {
  return ownThresholds(source).flatMap(({ id, value, unit }, index) => {
    if (id !== 'overhead-line-stand-off' || (unit === 'm' && Number(value) === metres)) return [];
    return [
      faultAt(source, ['thresholds', index, 'value'], {
        rule: 'threshold-stand-off',
        found: `"${value} ${unit}"`,
        expected: `${metres} m, which the gate goes by`,
        mend: 'Write stand-off: { distance } to keep farther away; this figure only says where that distance comes from.',
      }),
    ];
  });
}

function doubles(source: Source, field: string, entries: readonly { readonly id: string }[]): readonly Fault[] {
  return entries.flatMap(({ id }, index) =>
    entries.findIndex((other) => other.id === id) === index
      ? []
      : [
          faultAt(source, [field, index, 'id'], {
            rule: 'list-duplicate',
            found: `${shown(id)} a second time`,
            expected: 'each id once',
            mend: 'Keep one of the two.',
          }),
        ],
  );
}
