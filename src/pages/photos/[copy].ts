import type { APIRoute, GetStaticPaths } from 'astro';
import { loadAtlas, venueDirectory } from '../../atlas/load-atlas.ts';
import { type PhotoCopy, photoBytes, photoSet } from '../../atlas/photo-store.ts';
import { publishedPhotos } from '../../atlas/published-photos.ts';

const TYPES = { avif: 'image/avif', webp: 'image/webp', jpg: 'image/jpeg' } as const;

interface Props {
  readonly file: string;
  readonly copy: PhotoCopy;
}

export const getStaticPaths = (async () => {
  const { venue } = await loadAtlas();
  const routes = await Promise.all(
    publishedPhotos(venue, venueDirectory()).map(async (file) => {
      const { copies } = await photoSet(file);
      return copies.map((copy) => ({ params: { copy: copy.name }, props: { file, copy } }));
    }),
  );
  // Two records may show one picture under two names.
  return [...new Map(routes.flat().map((route) => [route.params.copy, route])).values()];
}) satisfies GetStaticPaths;

export const GET: APIRoute<Props> = async ({ props: { file, copy } }) => {
  return new Response(new Uint8Array(await photoBytes(file, copy)), {
    headers: { 'content-type': TYPES[copy.format] },
  });
};
