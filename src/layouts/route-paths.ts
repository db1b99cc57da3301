import type { GetStaticPaths } from 'astro';
import { loadAtlas } from '../atlas/load-atlas.ts';

/** A page for each water. */
export const waterPaths = (async () => {
  const { venue } = await loadAtlas();
  return venue.waters.map(({ id }) => ({ params: { water: id } }));
}) satisfies GetStaticPaths;

/** A page for each match. */
export const matchPaths = (async () => {
  const { venue } = await loadAtlas();
  return (venue.matches ?? []).map((match) => ({ params: { match: match.id }, props: { match } }));
}) satisfies GetStaticPaths;

/** A page for each match whose pegs are planned. */
export const plannedMatchPaths = (async () =>
  (await matchPaths()).filter(({ props }) => props.match.plan.length > 0)) satisfies GetStaticPaths;
