/** Pixels between what is focused and what stays on the screen, for the ring around it. */
const SPARE = 8;

/**
 * Shows the parts of the day at the foot of the screen, above the strip that every page has there on a phone, and has the page
 * scroll what is focused or led to clear of both, and of the line of what is saved that stays at the head. How high they are
 * hangs on the reader's letters: hence measured, and again whenever they grow.
 */
export function stayAtFoot(parts: HTMLElement, strip: HTMLElement | null, saved: HTMLElement): void {
  parts.hidden = false;
  const place = () => {
    const below = strip?.offsetHeight ?? 0;
    const { style } = document.documentElement;
    parts.style.bottom = `${below}px`;
    style.scrollPaddingBottom = `${below + stayingHeight(parts) + SPARE}px`;
    style.scrollPaddingTop = `${stayingHeight(saved) + SPARE}px`;
  };
  const watch = new ResizeObserver(place);
  for (const one of [parts, strip, saved]) if (one !== null) watch.observe(one);
  place();
}

/** How much of the screen it takes while the page moves under it. */
function stayingHeight(one: HTMLElement): number {
  return getComputedStyle(one).position === 'sticky' ? one.offsetHeight : 0;
}
