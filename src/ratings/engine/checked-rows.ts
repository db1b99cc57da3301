import type { LatentModel } from './latent-model.ts';

/**
 * The number of rows of a model whose parts fit together.
 *
 * @throws {RangeError} naming the row, fixed effect or term that does not
 */
export function checkedRows({ observations: { lower, upper, blur }, fixed, terms }: LatentModel): number {
  const rows = lower.length;
  if (upper.length !== rows) throw new RangeError(`${rows} lower bounds and ${upper.length} upper bounds`);
  if (blur !== undefined && blur.length !== rows) throw new RangeError(`${rows} rows and ${blur.length} blurs`);
  if (blur?.some((sd) => !(sd >= 0 && Number.isFinite(sd)))) throw new RangeError('a blur is not a finite sd');
  for (let i = 0; i < rows; i++) {
    const isSettled = lower[i]! < upper[i]! || (lower[i] === upper[i] && Number.isFinite(lower[i]));
    if (!isSettled) throw new RangeError(`row ${i}: bounds ${lower[i]} and ${upper[i]} hold no value`);
  }
  for (const { name, values } of fixed) {
    if (values.length !== rows) throw new RangeError(`fixed effect ${name}: ${values.length} values for ${rows} rows`);
    if (!values.every(Number.isFinite)) throw new RangeError(`fixed effect ${name}: not all values are finite numbers`);
  }
  for (const { name, columns, rows: of } of terms) {
    if (of.rowStart.length !== rows + 1)
      throw new RangeError(`term ${name}: ${of.rowStart.length - 1} rows for ${rows}`);
    if (!of.weight.every(Number.isFinite)) throw new RangeError(`term ${name}: not all weights are finite numbers`);
    if (of.column.some((c) => c < 0 || c >= columns))
      throw new RangeError(`term ${name}: a column outside 0 to ${columns - 1}`);
  }
  return rows;
}
