/** Light modules that a reader needs on every side (ISO/IEC 18004: four). */
const QUIET_MODULES = 4;

/**
 * A square code as one SVG path, a unit a module, with its quiet zone: always dark on white, also where the page is dark.
 * @param rows the modules from the top, true where dark
 */
export function squareCode(rows: readonly (readonly boolean[])[], label: string): string {
  const side = rows.length + 2 * QUIET_MODULES;
  const runs = rows.flatMap((row, y) =>
    runsOf(row).map(([x, length]) => `M${x + QUIET_MODULES} ${y + QUIET_MODULES}h${length}v1h-${length}z`),
  );
  const words = label.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
  return `<svg class="square-code" viewBox="0 0 ${side} ${side}" role="img" aria-label="${words}" shape-rendering="crispEdges"><path fill="#fff" d="M0 0H${side}V${side}H0z"/><path fill="#000" d="${runs.join('')}"/></svg>`;
}

/** Where dark modules begin in a row, and how many follow one another. */
function runsOf(row: readonly boolean[]): readonly (readonly [start: number, length: number])[] {
  const runs: [number, number][] = [];
  row.forEach((isDark, x) => {
    const last = runs.at(-1);
    if (!isDark) return;
    if (last !== undefined && last[0] + last[1] === x) last[1]++;
    else runs.push([x, 1]);
  });
  return runs;
}
