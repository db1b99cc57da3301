import type { BagModel } from '../bag-model.ts';
import { evidenceOf } from '../evidence.ts';
import { isSettled } from '../fit-report.ts';
import { interval80 } from '../interval.ts';
import type { RatedVenue } from '../rated-venue.ts';
import type { BesideWorth } from '../ratings.ts';
import type { BesideCurve } from './beside-term.ts';
import { besideOffers, fitBeside } from './fit-beside.ts';

/**
 * What every term beside the model says, point by point, each against the average session of its own curve; a point that no session
 * lies near is left out. Whether a term may be published, the back-test says.
 */
export function besideWorths(venue: RatedVenue, { model, fit, sessions }: BagModel): BesideWorth[] {
  return besideOffers(venue, sessions).flatMap((offer) => {
    if ('why' in offer) return [];
    const term = fitBeside(offer.term, { latent: model.latent, fit, sessions });
    return offer.term.curves.flatMap((curve) => {
      const counts = countsOf(curve, sessions);
      const all = counts.reduce((sum, count) => sum + count, 0);
      // Where all lie near one point there is nothing to compare.
      if (counts.filter((count) => count > 0).length < 2) return [];
      const middle = Array.from({ length: offer.term.columns }, (_, column) =>
        curve.points.reduce((sum, { weights }, p) => sum + (weights[column]! * counts[p]!) / all, 0),
      );
      return curve.points.flatMap(({ at, weights }, p): BesideWorth[] => {
        if (counts[p] === 0) return [];
        const contrast = weights.map((weight, column) => weight - middle[column]!);
        const { mean, sd } = term.posterior(contrast);
        return [
          {
            of: offer.of,
            group: curve.group,
            at,
            worth: Math.exp(mean),
            ...interval80(mean, sd),
            sessions: counts[p]!,
            evidence: isSettled(fit) ? evidenceOf(sd, term.sd * Math.hypot(...contrast)) : 'thin',
          },
        ];
      });
    });
  });
}

function countsOf(curve: BesideCurve, sessions: BagModel['sessions']): number[] {
  const counts = curve.points.map(() => 0);
  for (const session of sessions) {
    const point = curve.pointOf(session);
    if (point !== null) counts[point]! += 1;
  }
  return counts;
}
