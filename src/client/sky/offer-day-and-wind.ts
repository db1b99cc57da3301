/** Offers the sun and wind of another day. What works them out is fetched at the first tap: most readers never ask. */

for (const place of document.querySelectorAll<HTMLElement>('[data-sky]')) {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = 'Another day or wind';
  button.addEventListener('click', async () => {
    const { askDayAndWind } = await import('./day-and-wind.ts');
    button.remove();
    askDayAndWind(place);
  });
  place.append(button);
}
