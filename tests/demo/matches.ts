/**
 * The match the demo's club has planned, by its path inside the folder: the plan is what `venue -- plan` writes into the rest
 * (`tests/demo/demo-venue.test.ts` holds it to the rules).
 */
export const DEMO_MATCHES: ReadonlyMap<string, string> = new Map([
  [
    'matches/2026-12-06-winter-three.md',
    `---
name: Winter three
date: 2026-12-06
waters: [kiln-pool]
entries: 24
sections: 4
apart: 8 m
step-free: 1 # Pegs near the car park, as asked for with the entry
ends: { rule: one-a-section, features: [corner] }
places: 5
draw: 08:30
all-in: 10:00
all-out: 15:00
status: planned
pegs:
  A: [kiln-pool/19, kiln-pool/20, kiln-pool/22, kiln-pool/23, kiln-pool/24, kiln-pool/25]
  B: [kiln-pool/26, kiln-pool/27, kiln-pool/28, kiln-pool/30, kiln-pool/31, kiln-pool/32]
  C: [kiln-pool/33, kiln-pool/34, kiln-pool/1, kiln-pool/3, kiln-pool/4, kiln-pool/5]
  D: [kiln-pool/6, kiln-pool/9, kiln-pool/10, kiln-pool/11, kiln-pool/12, kiln-pool/13]
kept: [kiln-pool/32]
---

Tea and bacon rolls in the lodge from eight. Keep nets dry until the all in; dip them before.
`,
  ],
]);
