import { MONTH_NAMES, type Month } from '../../../src/domain/day.ts';
import type { VenueSettings } from '../../../src/domain/venue.ts';
import { rounded } from '../ground/spot.ts';
import { GRAMS_PER_OUNCE } from '../log/bag-parts.ts';
import { markdownFile } from './front-matter.ts';
import { metres } from './quantities.ts';

/** The text of `venue.md`. */
export function settingsText(settings: VenueSettings, format?: number): string {
  const { emergency, standOff, permittedReach, inspection } = settings;
  return markdownFile(
    {
      format,
      name: settings.name,
      club: settings.club,
      invented: settings.invented,
      'guide-day': settings.guideDay,
      address: settings.address,
      units: { ...settings.units },
      contacts: settings.contacts.map((contact) => ({ ...contact })),
      emergency: {
        number: emergency.number,
        'also-number': emergency.alsoNumber,
        'text-number': emergency.textNumber,
        'nearest-town': emergency.nearestTown,
        'power-number': emergency.powerNumber,
        'pollution-number': emergency.pollutionNumber,
        postcode: emergency.postcode,
        directions: emergency.directions,
        'gate-note': emergency.gateNote,
      },
      'bag-parts': settings.bagParts.map((part) => ({ ...part, species: part.species })),
      features: settings.features.map((feature) => ({ ...feature })),
      'stand-off': {
        distance: metres(standOff.metres),
        'conductor-spread': metres(standOff.conductorSpreadMetres),
        'map-error': metres(standOff.mapErrorMetres),
      },
      'lines-surveyed': settings.linesSurveyed === undefined ? undefined : { ...settings.linesSurveyed },
      'permitted-reach': {
        pole: metres(permittedReach.poleMetres),
        cast: metres(permittedReach.castMetres),
        sector: permittedReach.sectorDegrees,
      },
      inspection: {
        hazard: inspection.hazardDays,
        platform: inspection.platformDays,
        clearance: inspection.clearanceDays,
        'rescue-kit': inspection.rescueKitDays,
        lines: inspection.linesDays,
      },
      'risk-bands': settings.riskBands.map(({ actWithinDays, ...band }) => ({ ...band, 'act-within': actWithinDays })),
      ratings: {
        'scale-division': `${rounded(settings.ratingRules.scaleDivisionGrams / GRAMS_PER_OUNCE, 3)} oz`,
        'count-chosen-pegs': settings.ratingRules.countChosenPegs,
      },
      'nesting-months': monthRange(settings.nestingMonths),
    },
    settings.rulesMarkdown,
  );
}

function monthRange(months: readonly Month[]): string | undefined {
  const first = months[0];
  const last = months[months.length - 1];
  if (first === undefined || last === undefined) return undefined;
  return `${MONTH_NAMES[first - 1]} to ${MONTH_NAMES[last - 1]}`;
}
