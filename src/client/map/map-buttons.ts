import type L from 'leaflet';
import { make } from '../make.ts';

const STEP_PIXELS = 120;

/** Buttons that move and zoom the map for who drags with nothing: one tap each, and a name each. They stand below it: no peg is hidden. */
export function addMapButtons(map: L.Map, row: Element, showWhole: () => unknown): void {
  const bar = make('div', { className: 'live-buttons' });
  bar.setAttribute('role', 'group');
  bar.setAttribute('aria-label', 'Move and zoom');
  const pan = (x: number, y: number) => () => map.panBy([x * STEP_PIXELS, y * STEP_PIXELS]);
  const acts: readonly (readonly [string, string, () => unknown])[] = [
    ['+', 'Zoom in', () => map.zoomIn(1)],
    ['−', 'Zoom out', () => map.zoomOut(1)],
    ['←', 'Move west', pan(-1, 0)],
    ['↑', 'Move north', pan(0, -1)],
    ['↓', 'Move south', pan(0, 1)],
    ['→', 'Move east', pan(1, 0)],
    ['all', 'Show all of the water', showWhole],
  ];
  for (const [sign, name, act] of acts) {
    const button = make('button', { type: 'button' }, sign);
    button.setAttribute('aria-label', name);
    button.addEventListener('click', act);
    bar.append(button);
  }
  row.prepend(bar);
}
