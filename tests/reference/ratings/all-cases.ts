import { CENSORED_MODELS } from './censored-models.ts';
import { CLOSED_FORMS } from './closed-forms.ts';
import { CYCLIC_WALKS } from './cyclic-walk.ts';
import type { ReferenceCase } from './figure.ts';
import { MIXED_MODELS } from './mixed-models.ts';
import { REGRESSIONS } from './regressions.ts';

/** Every published case the statistics engine is held against. */
export const RATINGS_CASES: readonly ReferenceCase[] = [
  ...MIXED_MODELS,
  ...CENSORED_MODELS,
  ...CYCLIC_WALKS,
  ...REGRESSIONS,
  ...CLOSED_FORMS,
];
