/** A way of saying something that readers took wrong, and what is said in its place. */
export interface Correction {
  /** The correction as the club's editor wrote it. */
  readonly line: string;
  /** What nothing that is read may say. */
  readonly not: RegExp;
}

/**
 * Every correction of wording that a pattern can hold, by the words it was asked in. Read as a plain-English editor and a
 * match angler would (common practice, no source).
 */
export const CORRECTIONS: readonly Correction[] = [
  { line: 'what happened last year against what was said is a forecast, not foretold', not: /\bforet(?:ell|old)/i },
  { line: 'a hazard that still exists is current, not in force', not: /hazards? in force|\bin force\b/i },
  { line: 'a check past its day is overdue by days, not out of date by them', not: /out of date by/i },
  { line: 'a contour of depth is a depth contour, not a line of equal depth', not: /equal depth/i },
  { line: 'the rescue throw line is a throw line, not a life-line', not: /\blife-?lines?\b/i },
  { line: '3: due a check every 28 days, not looked at every 28 days', not: /looked at every/i },
  { line: '4: in front of you, by the map, not within reach of a far bank', not: /Within reach(?! of a top kit)/ },
  { line: '6: 75 mm over where depths are in metres', not: /Depths in metres\.[^.]*\bin over\b/ },
  { line: '7: Record its position, not Keep where it is', not: /Keep where it is/i },
  { line: '10: what is swept keeps off by so much, not comes to', not: /what is swept from here comes to/i },
  { line: '13: poor day, typical, good day of a bag', not: /lower quarter, middle|middle, upper quarter/i },
  { line: '14: average club angler, not club-average rod', not: /club-average/i },
  { line: '17: Off your back, and Left to right', not: /\bOn your back\b|Across, from the (?:left|right)/ },
  { line: '17: never “low over the float never”', not: /low over the float never/i },
  { line: '18: Other hazard, with the record’s own words only', not: /Hazard\s*[./:]\s*Take care/i },
  { line: '19: next check 12 Dec, not due every 28 days', not: /\bdue every\b/i },
  { line: '20: treat all scum as poisonous', not: /\bas if (?:it|all scum) were poison/i },
  { line: '21: keep 30 m away, walking too', not: /along the ground from every one/i },
  { line: '22: all in and all out, not first and last whistle', not: /(?:first|last) whistle/i },
  { line: '23: hard rules always come first', not: /hard rules?\b[^.]*\bstands? first/i },
  { line: '24: the point shows which way it faces', not: /\bits beak\b/i },
  { line: '25: thresholds by proper names, not by their ids', not: /Overhead line stand off\b/ },
  { line: '26: replaced on a day', not: /replaced from/i },
  { line: '27: a measure, not a hand lower', not: /\ba hand (?:lower|higher)/i },
  { line: '27: one colon where a closing is told', not: /closed since [^:\n]+: [^:;.\n]+: / },
  { line: '28: what this guide rests on', not: /What stands behind this guide|comes with its doubt/i },
  { line: '28: Data to a day, not Guide of', not: /\bGuide of \d/ },
  { line: '29: Your own depth, saved on this phone only', not: /Your own plumb\b|above under its line/i },
  { line: '30: nearest plumbing so far away', not: /\bplumbed [\d.]+ (?:m|ft) off/i },
  { line: '31: Swim width, not room clear width', not: /Room \d[\d.]* m clear width|Clear of it by little/i },
  { line: '33: Remove, put right, loaded', not: /Take this hazard out again|was read in\b|go on with it\b/i },
  { line: '34: is not a length, choose what it is', not: /\bis no (?:length|temperature|level)\b|needs its kind/i },
  { line: '35: listed below, and Who to ask', not: /\bstands? below(?! it)\b|\bWhom to ask/i },
  { line: '36: anglers who may choose, not fancy', not: /pegs they fancy/i },
  { line: '36: how much is left to chance is said once', not: /× or ÷|one way or the other/i },
  { line: '36: gives none, not states none', not: /\bstates none\b/i },
  { line: '38: faults are sentences', not: /Unexpected open peg/i },
  { line: '41: longitude with E or W, never a minus sign', not: /\d° ?[NS]?,? ?-\d|\d\.\d{4,}, -\d\.\d{4,}/ },
];

/** What of a text must not be said: each correction it misses, and the words around. */
export function missedIn(text: string, where: string): readonly string[] {
  return CORRECTIONS.flatMap(({ line, not }) => {
    const found = not.exec(text);
    if (found === null) return [];
    const around = text.slice(Math.max(0, found.index - 40), found.index + found[0].length + 40);
    return [`${where}: ${line}: “${around.replace(/\s+/g, ' ')}”`];
  });
}
