/**
 * Offers "Where am I?" on every page: in the strip at the foot of a phone's screen, else at the head of the emergency block. What
 * works it out is fetched at the first tap.
 */
const strip = document.querySelector<HTMLElement>('.help-strip');
const isShown = strip !== null && getComputedStyle(strip).display !== 'none';
const place = isShown ? strip : document.querySelector<HTMLElement>('#emergency');
if (place !== null) {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'where-here screen-only';
  button.textContent = 'Where am I?';
  button.addEventListener('click', async () => {
    const { sayWhere } = await import('./say-where.ts');
    await sayWhere(place, button);
  });
  place.append(button);
}
