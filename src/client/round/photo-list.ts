import { newReference } from '../new-reference.ts';
import type { PhotoDraft } from './draft.ts';
import { fromTemplate, requireElement } from './elements.ts';
import type { FormContext } from './form-context.ts';
import { shrinkPhoto } from './shrink-photo.ts';

/** The photos of one peg on its form. */
export interface PhotoList {
  /** Shrinks, keeps and shows a picture, in the list or in `where`. Returns its id, null where the file is no picture. */
  readonly add: (file: File, where?: HTMLElement) => Promise<string | null>;
  /** Shows a kept photo in another place than the list. */
  readonly showIn: (id: string, where: HTMLElement) => void;
  readonly remove: (id: string) => void;
}

/** Shows the photos of a peg with what each shows, and keeps new ones. */
export function photoList(list: HTMLElement, context: FormContext): PhotoList {
  const { draft, onPhoto, onPhotoRemoved } = context;
  const figures = new Map<string, HTMLElement>();

  const show = (photo: PhotoDraft, where: HTMLElement): void => {
    const figure = fromTemplate('photo');
    const image = new Image();
    image.src = URL.createObjectURL(new Blob([photo.jpeg], { type: 'image/jpeg' }));
    image.alt = photo.shows;
    const shows = requireElement<HTMLInputElement>('[data-shows]', figure);
    shows.value = photo.shows;
    shows.addEventListener('input', () => onPhoto({ ...photo, shows: shows.value }));
    requireElement('[data-remove-photo]', figure).addEventListener('click', () => remove(photo.id));
    figure.prepend(image);
    figures.set(photo.id, figure);
    where.append(figure);
  };
  const remove = (id: string): void => {
    const figure = figures.get(id);
    if (figure !== undefined) URL.revokeObjectURL(requireElement<HTMLImageElement>('img', figure).src);
    figure?.remove();
    figures.delete(id);
    onPhotoRemoved(id);
  };

  const ofHazards = new Set([...draft.found, ...draft.lookedAt].map(({ photo }) => photo));
  for (const photo of context.photos) if (!ofHazards.has(photo.id)) show(photo, list);
  return {
    add: async (file, where = list) => {
      const jpeg = await shrinkPhoto(file);
      if (jpeg === null) return null;
      const photo = { ref: draft.ref, id: newReference(), water: draft.water, peg: draft.peg, shows: '', jpeg };
      onPhoto(photo);
      show(photo, where);
      return photo.id;
    },
    showIn: (id, where) => {
      const photo = context.photos.find((one) => one.id === id);
      if (photo !== undefined) show(photo, where);
    },
    remove,
  };
}
