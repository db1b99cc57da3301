import type { BagPart, Units } from './bag.ts';
import type { Day, Month } from './day.ts';
import type { HourWeight } from './hour-weight.ts';
import type { Language } from './language.ts';
import type { League } from './league.ts';
import type { LinesSurvey } from './lines-survey.ts';
import type { Water } from './map.ts';
import type { Match } from './match.ts';
import type { Notice } from './notice.ts';
import type { Peg, PermittedReach } from './peg.ts';
import type { LatLng } from './place.ts';
import type { BankRound } from './round.ts';
import type { BlankMeaning, FishingEvent, Session } from './session.ts';

export interface Contact {
  /** A role, never a person's name: "Bailiff". */
  readonly role: string;
  readonly phone?: string;
  readonly email?: string;
}

export interface Emergency {
  readonly number: string;
  /** A second number that reaches the same operators: 112 beside 999. */
  readonly alsoNumber?: string;
  /** Where a message reaches the emergency services without a voice call: 999 in the United Kingdom. */
  readonly textNumber?: string;
  /** Said to the call handler after the venue's name. */
  readonly nearestTown?: string;
  /** The network operator's emergency number: 105 in Great Britain only. */
  readonly powerNumber?: string;
  readonly pollutionNumber?: string;
  readonly postcode?: string;
  readonly directions?: string;
  /** Said of locked gates. */
  readonly gateNote?: string;
}

export interface Feature {
  readonly id: string;
  readonly name: string;
  readonly meaning?: string;
}

/** The distance to keep from an overhead line, along the ground, and what is taken off a mapped distance first. */
export interface StandOffRule {
  /** Never below 30 m. */
  readonly metres: number;
  /** Full width between the outermost conductors where a line does not say. */
  readonly conductorSpreadMetres: number;
  readonly mapErrorMetres: number;
}

/** Days between checks, by what is checked. */
export interface InspectionIntervals {
  readonly hazardDays: number;
  readonly platformDays: number;
  readonly clearanceDays: number;
  readonly rescueKitDays: number;
  /** Whether the overhead lines are still as the map has them. */
  readonly linesDays: number;
}

/** A band of the risk matrix: scores (severity × likelihood) from `from` up to the next band's. */
export interface RiskBand {
  readonly from: number;
  readonly name: string;
  readonly meaning: string;
  /** A current hazard in this band takes its peg out of the draw. */
  readonly closes?: boolean;
  /** Days from finding a hazard in this band, or finding it worse, to the day by which it is dealt with. */
  readonly actWithinDays?: number;
}

/** A figure a rule rests on, with where it comes from. */
export interface Threshold {
  readonly id: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly edition?: string;
  readonly checkedOn?: Day;
  /** `seen`, `second-hand` or `memory`: a figure from memory is never printed as a fact without saying so. */
  readonly basis: 'seen' | 'second-hand' | 'memory' | 'club';
}

export interface RatingRules {
  /** The scale's smallest division: a blank is left-censored here. */
  readonly scaleDivisionGrams: number;
  /** Whether sessions on chosen pegs count. */
  readonly countChosenPegs: boolean;
  /** What a session logged as a blank stands for, unless its event says otherwise; the shipped reading where left out. */
  readonly blankMeans?: BlankMeaning;
}

/** What `venue.md` says. */
export interface VenueSettings {
  readonly name: string;
  readonly club: string;
  /** Demo data: every page says that the venue is invented. */
  readonly invented: boolean;
  /** The one stated date: the day of the data this guide shows. */
  readonly guideDay: Day;
  /** Where the guide will be published, with its sub-path: `https://club.example/guide/`. */
  readonly address?: string;
  readonly contacts: readonly Contact[];
  readonly emergency: Emergency;
  readonly units: Units;
  /** Of the pages for anglers; hazards, closings and first steps are said in English in every one. */
  readonly language: Language;
  readonly bagParts: readonly BagPart[];
  readonly features: readonly Feature[];
  readonly standOff: StandOffRule;
  /** Who looked for overhead lines at all waters, when and from what; a water may have its own. */
  readonly linesSurveyed?: LinesSurvey;
  readonly permittedReach: PermittedReach;
  readonly inspection: InspectionIntervals;
  readonly riskBands: readonly RiskBand[];
  readonly thresholds: readonly Threshold[];
  readonly ratingRules: RatingRules;
  /** Months in which cutting waits because of nests; the club's window. */
  readonly nestingMonths: readonly Month[];
  /** The body of `venue.md`: the venue's rules. */
  readonly rulesMarkdown: string;
}

/** A plumbed depth, as it was measured. */
export interface Sounding {
  readonly water: string;
  /** Where the row gives a position. */
  readonly at?: LatLng;
  /** Where the row gives a peg, a distance from it and a bearing (degrees from true north; the peg's facing if empty). */
  readonly fromPeg?: {
    readonly peg: string;
    readonly distanceMetres: number;
    readonly bearingDegrees?: number;
  };
  /** Positive downward from the water surface of that hour. */
  readonly depthMetres: number;
  readonly day: Day;
  /** Level above datum when plumbed, where noted. */
  readonly levelMetres?: number;
  readonly file: string;
  readonly line: number;
}

export interface GaugeReading {
  readonly water: string;
  readonly day: Day;
  /** Above datum, negative below. */
  readonly levelMetres?: number;
  readonly waterDegreesC?: number;
}

/** Everything a venue folder holds, checked. */
export interface Venue {
  readonly settings: VenueSettings;
  readonly waters: readonly Water[];
  /** The stands of the guide. */
  readonly pegs: readonly Peg[];
  /** Stands that are no longer fished, for the days of the log on which they were. */
  readonly retired?: readonly Peg[];
  readonly events: readonly FishingEvent[];
  readonly sessions: readonly Session[];
  /** When fish came, where anglers noted it. */
  readonly hours?: readonly HourWeight[];
  readonly notices: readonly Notice[];
  /** Matches of the club, planned and fished. */
  readonly matches?: readonly Match[];
  readonly leagues?: readonly League[];
  readonly rounds: readonly BankRound[];
  readonly soundings: readonly Sounding[];
  readonly gauge: readonly GaugeReading[];
}
