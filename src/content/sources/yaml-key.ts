import { isScalar, type Pair } from 'yaml';

/** The key of a field of YAML, as it is written. */
export function keyText({ key }: Pair): string {
  return isScalar(key) ? String(key.value) : String(key);
}
