import type { LatentModel, ModeStart } from './latent-model.ts';
import type { LatentState } from './latent-state.ts';
import { solveUpperSmall } from './orthonormal-columns.ts';

/**
 * Where the mode of a state lies, by the names of terms and fixed effects, so that a fit of nearly the same data can look for its own
 * from there. The state must stand at its mode.
 */
export function modeStartOf({ prepared, x }: LatentState, { terms, fixed }: LatentModel): ModeStart {
  const { blocks, levels, fixedFrom, fixed: columns } = prepared;
  const onQ = fixedFrom < 0 ? new Float64Array(0) : x.slice(levels + fixedFrom);
  const beta = onQ.length === 0 ? onQ : solveUpperSmall(columns.r, onQ);
  return {
    effects: Object.fromEntries(
      terms.map(({ name }, t) => {
        const { from, count } = blocks[t]!;
        const first = from < 0 ? 0 : levels + from;
        return [name, x.slice(first, first + count)];
      }),
    ),
    fixed: Object.fromEntries(Array.from(beta, (value, k) => [fixed[columns.kept[k]!]!.name, value])),
  };
}

/**
 * Moves a state's effects to where another fit had them. Levels of a factor that it did not know yet stay at zero; a walk of another
 * length is another walk and stays there too. The mode is the only one, so that a start decides how long the search is, not its end.
 */
export function startAtModeInPlace(
  { prepared, x }: LatentState,
  { terms, fixed }: LatentModel,
  { effects, fixed: beta }: ModeStart,
): void {
  const { blocks, levels, fixedFrom, fixed: columns } = prepared;
  terms.forEach(({ name }, t) => {
    const { from, count, basis } = blocks[t]!;
    const known = effects[name];
    if (known === undefined || known.length > count || (basis !== null && known.length !== count)) return;
    x.set(known, from < 0 ? 0 : levels + from);
  });
  if (fixedFrom < 0) return;
  const values = columns.kept.map((k) => beta[fixed[k]!.name]);
  if (values.includes(undefined)) return;
  columns.r.forEach((row, i) => {
    x[levels + fixedFrom + i] = row.reduce((sum, r, j) => sum + r * values[j]!, 0);
  });
}
