/**
 * How sure every published interval is, in percent: four truths in five lie inside. Here and nowhere else; only the names
 * `low80`, `high80` and `coverage80` of the published documents repeat it, since who reads those must know what they read.
 */
export const INTERVAL_PERCENT = 80;

/** The same as it is said. */
export const INTERVAL_WORDS = `${INTERVAL_PERCENT}%`;

/** Half its width in standard deviations of a normal distribution: Φ⁻¹(0.9). */
export const INTERVAL_SDS = 1.2815515655446004;

/** The share of a distribution that lies below its lower end, and below its upper end. */
export const LOWER_SHARE = (100 - INTERVAL_PERCENT) / 200;
export const UPPER_SHARE = (100 + INTERVAL_PERCENT) / 200;
