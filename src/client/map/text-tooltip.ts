import type L from 'leaflet';

/**
 * Gives a thing on the map a tooltip of plain words. The library takes a string for HTML, and the words come from the venue's
 * files: a name such as a refresh tag would lead the reader away. This is the one place that calls it.
 */
export function bindTextTooltip(layer: L.Layer, words: string, options?: L.TooltipOptions): void {
  const text = document.createElement('span');
  text.textContent = words;
  layer.bindTooltip(text, options);
}
