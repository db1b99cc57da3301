const SECOND_TAP_MILLISECONDS = 500;
const SAME_PLACE_PIXELS = 40;

/**
 * Lets a second tap at the same place within half a second do nothing: what lies under the finger by then is often another
 * button than the one that was meant. Text fields are left alone, since a double tap there selects a word.
 */
export function guardSecondTap(within: Document): void {
  let last: { readonly at: number; readonly x: number; readonly y: number } | null = null;
  let isSecond = false;
  within.addEventListener(
    'pointerdown',
    ({ timeStamp, clientX, clientY }) => {
      isSecond =
        last !== null &&
        timeStamp - last.at < SECOND_TAP_MILLISECONDS &&
        Math.hypot(clientX - last.x, clientY - last.y) < SAME_PLACE_PIXELS;
      if (!isSecond) last = { at: timeStamp, x: clientX, y: clientY };
    },
    true,
  );
  within.addEventListener(
    'click',
    (event) => {
      // A click made with a key has no taps to count.
      if (!isSecond || event.detail === 0) return;
      if (
        event.target instanceof Element &&
        event.target.closest('input[inputmode], input[maxlength], textarea, select')
      )
        return;
      event.preventDefault();
      event.stopImmediatePropagation();
    },
    true,
  );
}
