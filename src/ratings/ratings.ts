import type { Day, Month } from '../domain/day.ts';
import type { BesideName, BesideSilence } from './beside/beside-term.ts';
import type { DnwLesson } from './dnw-mechanism.ts';
import type { FitReport, UnsettledFit } from './fit-report.ts';

/** How much the data narrowed the prior. */
export type Evidence = 'thin' | 'fair' | 'solid';

/** `total`, or the id of a bag part. */
export type BagId = string;

/** Standard deviations of the model's terms, on the log scale. */
export interface ModelSummary {
  readonly sd: {
    /** Of days as they were: by water, by season and by what the day itself gave, together. */
    readonly event: number;
    readonly angler: number;
    readonly peg: number;
    readonly feature: number;
    readonly featureMonth: number;
    readonly residual: number;
  };
  readonly logMarginal: number;
  readonly sessions: number;
  readonly censored: number;
}

/** A feature's worth in a month. `low80` and `high80` are multiples of par, like `exp(logWorth)`. */
export interface FeatureMonth {
  readonly feature: string;
  readonly month: Month;
  readonly logWorth: number;
  readonly sd: number;
  readonly low80: number;
  readonly high80: number;
  /** Sessions on pegs with the feature in that month. */
  readonly sessions: number;
  readonly evidence: Evidence;
}

/** A peg's worth over the year: its own sum and its features' yearly level, less its water's mean of the same. */
export interface PegWorth {
  readonly water: string;
  readonly peg: string;
  readonly logWorth: number;
  readonly sd: number;
}

export interface PegMonth {
  readonly water: string;
  readonly peg: string;
  readonly month: Month;
  /** Multiple of par. */
  readonly worth: number;
  readonly low80: number;
  readonly high80: number;
  /** Sessions on this peg in that month. */
  readonly sessions: number;
  readonly evidence: Evidence;
}

/** Weight to frame and to win: middle over the month's events, with the range. Null where no event says. */
export interface FramingMonth {
  readonly water: string;
  readonly month: Month;
  readonly events: number;
  /**
   * Where the water fished otherwise once: the first day and the number of the events that count half or more, and what it fished
   * then as a multiple of now where even the latest of them lies before it came to fish as it does; else null.
   */
  readonly mostlyFrom: { readonly day: Day; readonly events: number; readonly levelThen: number | null } | null;
  readonly frameKg: number | null;
  readonly winKg: number | null;
  readonly frameLowKg: number | null;
  readonly frameHighKg: number | null;
  readonly winLowKg: number | null;
  readonly winHighKg: number | null;
}

/** How a water fished in a stretch of the log beside its latest one, with its 80% interval; a multiple of today's level. */
export interface WaterLevel {
  readonly water: string;
  /** Days of its first and last event. */
  readonly from: Day;
  readonly until: Day;
  readonly events: number;
  readonly logLevel: number;
  readonly sd: number;
  readonly low80: number;
  readonly high80: number;
}

/** Lower quarter, middle and upper quarter, in kilograms. */
export interface Quartiles {
  readonly lowKg: number;
  readonly middleKg: number;
  readonly highKg: number;
}

/** What a club-average rod may expect at a peg in a month. */
export interface ExpectedBag {
  readonly water: string;
  readonly peg: string;
  readonly month: Month;
  readonly total: Quartiles;
  readonly parts: readonly {
    readonly part: BagId;
    readonly bag: Quartiles;
    readonly chanceOfNone: number;
  }[];
  readonly chanceToFrame: number;
  /** What a lottery gives: places ÷ field. */
  readonly chanceByDraw: number;
  readonly evidence: Evidence;
}

/** Share of each bag part in framing bags of a month, over sessions whose parts are logged. */
export interface FramingMakeUp {
  readonly water: string;
  readonly month: Month;
  readonly bags: number;
  readonly shares: readonly { readonly part: BagId; readonly share: number }[];
}

/** A feature's worth in a band of water temperature (2 °C wide, from `fromDegreesC`). */
export interface FeatureTemperature {
  readonly feature: string;
  readonly fromDegreesC: number;
  readonly logWorth: number;
  readonly sd: number;
  readonly low80: number;
  readonly high80: number;
  readonly sessions: number;
  readonly evidence: Evidence;
}

/** Mean fish size of a bag part in a year, where counts are logged. */
export interface FishSize {
  readonly water: string;
  readonly part: BagId;
  readonly year: number;
  readonly fish: number;
  readonly meanGrams: number;
  readonly low80Grams: number;
  readonly high80Grams: number;
}

/** What anglers chose, with its adjusted worth: chosen, not drawn. */
export interface ChoiceWorth {
  readonly water: string;
  readonly about: 'spot' | 'method' | 'bait' | 'lines';
  readonly value: string;
  readonly sessions: number;
  /** Multiple of what the same peg, day and angler would do. */
  readonly worth: number;
  readonly low80: number;
  readonly high80: number;
  readonly evidence: Evidence;
}

/** What forecasts the last year: the model by month or by water temperature, every peg at par, what each peg averaged before. */
export type ForecasterName = 'model' | 'model-by-temperature' | 'flat' | 'peg-average';

export interface BacktestScore {
  readonly name: ForecasterName;
  /** Root mean square error of log bag within the event, of what was weighed. */
  readonly rootMeanSquareError: number;
  /** Mean Spearman rank agreement within events. */
  readonly rankAgreement: number;
  /** Share of weighed bags inside the stated 80% interval; null where the guess states none. */
  readonly coverage80: number | null;
}

export interface Backtest {
  readonly events: number;
  readonly sessions: number;
  readonly scores: readonly BacktestScore[];
  /** Share of outcomes at or below each stated probability: `[0.1, 0.2, … 0.9]` against what happened. */
  readonly calibration: readonly {
    readonly stated: number;
    readonly happened: number;
  }[];
  /** The same for each bag part: of what it weighs where there is some, if it is often missing. */
  readonly parts: readonly PartBacktest[];
  /** Whether better anglers drew better pegs in the year under test: within events, as far as the years before knew both. */
  readonly balance?: { readonly sessions: number; readonly correlation: number; readonly z: number } | null;
  /** What the day or the bed reveals beside the peg, each as a term more, and whether it earns its place. */
  readonly besides: readonly BesideTest[];
}

/** How the weights of one bag part were forecast, all of the last year at once from the years before it. */
export interface PartBacktest {
  readonly part: BagId;
  readonly events: number;
  readonly sessions: number;
  /** Bags without the part are left out, since whether there is any is told apart. */
  readonly isWhereAny: boolean;
  readonly rootMeanSquareError: number;
  readonly rankAgreement: number;
  readonly coverage80: number | null;
  readonly calibration: Backtest['calibration'];
}

/** What a term beside the model would have made of the error of last year's forecasts; or why this log does not tell. */
export type BesideTest = { readonly of: BesideName } & (
  | { readonly why: BesideSilence }
  | {
      /** Root mean square error of log bag within the event, with the term and without. */
      readonly errorWith: number;
      readonly errorWithout: number;
      /** By how many of its standard errors over the events the squared error fell. */
      readonly gainInErrors: number;
      /** Twice the log marginal likelihood that the years before it gave the term over none. */
      readonly asked: number;
      readonly isEarned: boolean;
    }
);

/** One point of a curve of a term that earned its place. */
export interface BesideWorth {
  readonly of: BesideName;
  /** Which curve: "force 4 and over, April to September". */
  readonly group: string;
  /** Empty pegs, metres of open water along the wind, or metres of depth. */
  readonly at: number;
  /** Multiple of what the average session of that curve gives. */
  readonly worth: number;
  readonly low80: number;
  readonly high80: number;
  readonly sessions: number;
  readonly evidence: Evidence;
}

/** Why a session does not enter the model, in the order in which it is told. */
export const LEFT_OUT_REASONS = [
  'chosen',
  'absent',
  'disqualified',
  'draw-unknown',
  'no-bound',
  'unlisted-in-full',
  'dnw',
  'part-unknown',
] as const;
export type LeftOutReason = (typeof LEFT_OUT_REASONS)[number];

/** Sessions that did not enter the model, counted. */
export interface RatingsLeftOut {
  readonly why: LeftOutReason;
  readonly sessions: number;
}

/** What this log cannot tell: what is mixed up with what, and where nothing was fished. Waters and features by name. */
export type RatingsNote =
  | { readonly about: 'no-session' | 'nobody-weighed' | 'one-event' | 'one-angler' }
  | UnsettledFit
  | { readonly about: 'lone-peg' | 'water-without-session'; readonly water: string }
  | { readonly about: 'feature-everywhere'; readonly water: string; readonly feature: string }
  | { readonly about: 'features-together'; readonly features: readonly string[] }
  | { readonly about: 'feature-nowhere'; readonly feature: string }
  | { readonly about: 'months-never-fished'; readonly water: string; readonly months: readonly Month[] }
  | { readonly about: 'pegs-never-drawn'; readonly water: string; readonly pegs: readonly string[] };

/** Tables of one bag: the total, or one bag part. */
export interface BagTables {
  readonly bag: BagId;
  readonly featureMonths: readonly FeatureMonth[];
  readonly pegs: readonly PegWorth[];
  readonly pegMonths: readonly PegMonth[];
  readonly model: ModelSummary;
}

/** Everything the ratings publish. Plain data: it is cached and printed as JSON. */
export interface Ratings {
  /** Tables of the total bag, then of each bag part that was logged. The first is always `total`. */
  readonly bags: readonly BagTables[];
  /** How the waters' own levels changed over the log; none of a water whose level stayed. */
  readonly waterLevels: readonly WaterLevel[];
  readonly framing: readonly FramingMonth[];
  readonly expectedBags: readonly ExpectedBag[];
  readonly framingMakeUp: readonly FramingMakeUp[];
  readonly featureTemperatures: readonly FeatureTemperature[];
  readonly fishSizes: readonly FishSize[];
  readonly choices: readonly ChoiceWorth[];
  /** What the day or the bed gives beside the peg: of the terms that earned their place in the back-test. */
  readonly besides: readonly BesideWorth[];
  readonly backtest: Backtest | null;
  readonly leftOut: readonly RatingsLeftOut[];
  /** What a plain fit shows with and without the DNW rows: the largest change of any solid or fair worth, and the residual. */
  readonly withoutDnw: {
    readonly residualSd: { readonly with: number; readonly without: number };
    readonly largestChange: number;
    readonly dnw: number;
  } | null;
  /** What the log taught of who does not weigh, or why it taught nothing and the stated assumption stands. */
  readonly dnwLesson: DnwLesson;
  /** How each fit behind the tables ended, in the order they were made. */
  readonly fits: readonly FitReport[];
  /** What cannot be told apart here. */
  readonly notes: readonly RatingsNote[];
}
