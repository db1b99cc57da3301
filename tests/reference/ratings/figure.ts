/** One figure that the statistics engine is held against: what it is, what is published, what the engine found. */
export interface Figure {
  readonly case: string;
  readonly figure: string;
  readonly expected: number;
  readonly found: number;
  /** Largest difference allowed, and whether it is a share of the expected figure. */
  readonly tolerance: number;
  readonly isRelative: boolean;
}

/** A published case: where its figures come from, and the engine's answers beside them. */
export interface ReferenceCase {
  readonly name: string;
  readonly source: string;
  readonly figures: () => Figure[];
}

export function isWithin({ expected, found, tolerance, isRelative }: Figure): boolean {
  // A figure of zero has no relative error.
  const allowed = isRelative && expected !== 0 ? tolerance * Math.abs(expected) : tolerance;
  return Math.abs(found - expected) <= allowed;
}

/** Collects figures of one case under the tolerance that was last set. */
export class FigureList {
  readonly figures: Figure[] = [];
  readonly #name: string;

  constructor(name: string) {
    this.#name = name;
  }

  relative(tolerance: number, pairs: Readonly<Record<string, readonly [expected: number, found: number]>>): this {
    return this.#add(tolerance, true, pairs);
  }

  absolute(tolerance: number, pairs: Readonly<Record<string, readonly [expected: number, found: number]>>): this {
    return this.#add(tolerance, false, pairs);
  }

  /** The worst of many like figures: the one furthest from what is expected. */
  worst(figure: string, tolerance: number, expected: readonly number[], found: ArrayLike<number>): this {
    let worst = 0;
    expected.forEach((value, i) => {
      if (Math.abs(value - found[i]!) > Math.abs(expected[worst]! - found[worst]!)) worst = i;
    });
    const name = `${figure} (worst of ${expected.length})`;
    return this.#add(tolerance, false, { [name]: [expected[worst]!, found[worst]!] });
  }

  #add(
    tolerance: number,
    isRelative: boolean,
    pairs: Readonly<Record<string, readonly [expected: number, found: number]>>,
  ): this {
    for (const [figure, [expected, found]] of Object.entries(pairs)) {
      this.figures.push({ case: this.#name, figure, expected, found, tolerance, isRelative });
    }
    return this;
  }
}
