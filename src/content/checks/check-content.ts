import type { Content } from '../content.ts';
import type { Fault } from '../fault.ts';
import { checkClosedByRecord } from './closed-by-record.ts';
import { checkClosingDays } from './closing-days.ts';
import { checkClosureStatus } from './closure-status.ts';
import { checkDatedFacts } from './dated-facts.ts';
import { checkDecimalPounds } from './decimal-pounds.ts';
import { checkEventNames } from './event-names.ts';
import { checkEventOverlaps } from './event-overlaps.ts';
import { checkFishedWhileClosed } from './fished-while-closed.ts';
import { checkGateOpeners } from './gate-openers.ts';
import { checkHalfReadNames } from './half-read-names.ts';
import { checkHazardDates } from './hazard-dates.ts';
import { checkHazardTwice } from './hazard-twice.ts';
import { checkLaterThanGuideDay } from './later-than-guide-day.ts';
import { checkLeagueMatches } from './league-matches.ts';
import { checkLineRecords } from './line-records.ts';
import { checkLinesSurveyed } from './lines-surveyed.ts';
import { checkLogGaps } from './log-gaps.ts';
import { checkMapDistances } from './map-distances.ts';
import { checkMapShapes } from './map-shapes.ts';
import { checkMatchPlans } from './match-plans.ts';
import { checkMatches } from './matches.ts';
import { checkNoticeNames } from './notice-names.ts';
import { checkPartsBeforeSince } from './parts-before-since.ts';
import { checkPegNames } from './peg-names.ts';
import { checkPegOutlook } from './peg-outlook.ts';
import { checkPegPositions } from './peg-positions.ts';
import { checkPegWords } from './peg-words.ts';
import { checkPhotoFiles } from './photo-files.ts';
import { checkClearedRules, checkPlaceHazards } from './place-hazards.ts';
import { checkPlaceholderPositions } from './placeholder-positions.ts';
import { checkPortableNames } from './portable-names.ts';
import { checkRoundRows } from './round-entries.ts';
import { checkSessionDuplicates } from './session-duplicates.ts';
import { checkSessionHours } from './session-hours.ts';
import { checkSessionListing } from './session-listing.ts';
import { checkSessionNames } from './session-names.ts';
import { checkSessionWeights } from './session-weights.ts';
import { checkSettingsLists } from './settings-lists.ts';
import { checkSoundingNeighbours } from './sounding-neighbours.ts';
import { checkSoundingPegs } from './sounding-pegs.ts';
import { checkStandNumbers } from './stand-numbers.ts';
import { checkStandOffGate } from './stand-off-gate.ts';
import { checkWaterFiles } from './water-files.ts';
import { type WaterGrounds, waterGrounds } from './water-grounds.ts';

/** A check between records: one idea, told as faults. */
type Check = (content: Content, grounds: WaterGrounds) => readonly Fault[];

/** Every check, in the order of the folder. */
const CHECKS: readonly Check[] = [
  checkPortableNames,
  checkSettingsLists,
  checkWaterFiles,
  checkLinesSurveyed,
  checkMapShapes,
  checkMapDistances,
  checkGateOpeners,
  checkPegNames,
  checkStandNumbers,
  checkDatedFacts,
  checkPegWords,
  checkPegPositions,
  checkPlaceholderPositions,
  checkPegOutlook,
  checkLineRecords,
  checkStandOffGate,
  checkClosedByRecord,
  checkClosingDays,
  checkPhotoFiles,
  checkHazardDates,
  checkHazardTwice,
  checkPlaceHazards,
  checkClearedRules,
  checkNoticeNames,
  checkClosureStatus,
  checkMatchPlans,
  checkLeagueMatches,
  checkRoundRows,
  checkEventNames,
  checkEventOverlaps,
  checkMatches,
  checkLogGaps,
  checkSessionNames,
  checkHalfReadNames,
  checkSessionWeights,
  checkDecimalPounds,
  checkSessionDuplicates,
  checkSessionListing,
  checkSessionHours,
  checkFishedWhileClosed,
  checkPartsBeforeSince,
  checkSoundingPegs,
  checkSoundingNeighbours,
  checkLaterThanGuideDay,
];

/**
 * Everything that is wrong between records that can each be read.
 * @param progress told of each check that was made
 */
export function checkContent(content: Content, progress: (what: string) => void = () => undefined): readonly Fault[] {
  const grounds = waterGrounds(content);
  return CHECKS.flatMap((check, index) => {
    const faults = check(content, grounds);
    progress(`check ${index + 1} of ${CHECKS.length}`);
    return faults;
  });
}
