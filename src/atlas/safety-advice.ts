import { CLEARING_DEFERS, CLEARING_TEXTS } from '../domain/clearing-texts.ts';
import { AED_TEXT, EMERGENCY_TEXTS } from '../domain/emergency-texts.ts';
import { FIRST_STEP_TEXTS } from '../domain/first-step-texts.ts';
import { HAZARD_KINDS } from '../domain/hazard-kinds.ts';
import { monthSpan } from '../domain/nesting.ts';
import { standOffWords } from '../domain/overhead-line-words.ts';
import { hazardKind } from '../domain/risk.ts';
import { type SafetySourceId, safetySourceWords } from '../domain/safety-sources.ts';
import {
  type SafetyFigures,
  type SafetySentence,
  type SafetyText,
  says,
  sentenceWords,
} from '../domain/safety-text.ts';
import { STAY_SAFE_TEXTS } from '../domain/stay-safe-texts.ts';
import type { Emergency, VenueSettings } from '../domain/venue.ts';
import { thresholdRow } from './threshold-words.ts';

type FigureSettings = Pick<VenueSettings, 'emergency' | 'standOff' | 'units' | 'thresholds' | 'nestingMonths'>;

/** A safety text with the venue's own numbers in it, as a page shows it. */
export interface SafetyAdvice {
  readonly id: string;
  readonly heading: string;
  readonly sign: string;
  readonly sentences: readonly string[];
  /** Who comes before it. */
  readonly defers: string;
}

/** The venue's numbers and figures by the names that safety texts give them. */
export function safetyFigures(settings: FigureSettings): SafetyFigures {
  const { emergency, standOff, units, thresholds, nestingMonths } = settings;
  return (name) => {
    switch (name) {
      case 'emergency':
        return emergency.number;
      case 'text':
        return emergency.textNumber ?? null;
      case 'power':
        return emergency.powerNumber ?? 'the network operator';
      case 'pollution':
        return emergency.pollutionNumber ?? null;
      case 'stand-off':
        return standOffWords(standOff.metres, units);
      case 'nesting-months':
        return nestingMonths.length === 0 ? null : monthSpan(nestingMonths);
      default: {
        const threshold = thresholds.find(({ id }) => id === name);
        return threshold === undefined ? null : thresholdRow(threshold).value;
      }
    }
  };
}

/** What to do in the first minutes. */
export function firstSteps(settings: FigureSettings): readonly SafetyAdvice[] {
  return FIRST_STEP_TEXTS.map((text) => adviceOf(text, safetyFigures(settings)));
}

/** How not to get into trouble. */
export function staySafe(settings: FigureSettings): readonly SafetyAdvice[] {
  return STAY_SAFE_TEXTS.map((text) => adviceOf(text, safetyFigures(settings)));
}

/** What stands beside the numbers of the emergency block. */
export function emergencyTexts(emergency: Emergency): readonly string[] {
  const figures: SafetyFigures = (name) => (name === 'text' ? (emergency.textNumber ?? null) : null);
  return wordsOf(EMERGENCY_TEXTS, figures);
}

/** The cautions before any cut, and who comes before them. */
export function clearingCautions(settings: FigureSettings): {
  readonly cautions: readonly { readonly about: string; readonly words: string }[];
  readonly defers: string;
} {
  const figures = safetyFigures(settings);
  return {
    cautions: CLEARING_TEXTS.flatMap((caution) => {
      const words = sentenceWords(caution, figures);
      return words === null ? [] : [{ about: caution.about, words }];
    }),
    defers: CLEARING_DEFERS.say,
  };
}

function adviceOf(text: SafetyText, figures: SafetyFigures): SafetyAdvice {
  const { id, heading, sign, defers } = text;
  return { id, heading, sign, sentences: wordsOf(sentencesOf(text), figures), defers: defers.say };
}

/** A text's sentences, those of its kind of hazard before its own. */
function sentencesOf({ kind, sentences }: SafetyText): readonly SafetySentence[] {
  if (kind === undefined) return sentences;
  const { advice, source } = hazardKind(kind);
  return [says(advice, source), ...sentences];
}

function wordsOf(sentences: readonly SafetySentence[], figures: SafetyFigures): readonly string[] {
  return sentences.map((sentence) => sentenceWords(sentence, figures)).filter((words) => words !== null);
}

/** One safety sentence with where its words live and what they rest on. */
export interface ListedSafetyText {
  /** "first steps: someone is in the water", "hazard: steep bank", "before cutting: nests". */
  readonly place: string;
  readonly words: string;
  readonly source: string;
  readonly sourceId: SafetySourceId;
}

/** Every safety text of the guide with its source, as a person would check them. */
export function listedSafetyTexts(settings: FigureSettings): readonly ListedSafetyText[] {
  const figures = safetyFigures(settings);
  const listed = (place: string, sentence: SafetySentence): readonly ListedSafetyText[] => {
    const words = sentenceWords(sentence, figures);
    if (words === null || words === '') return [];
    return [{ place, words, source: safetySourceWords(sentence.source), sourceId: sentence.source }];
  };
  const texts = (group: string, all: readonly SafetyText[]) =>
    all.flatMap((text) =>
      [...text.sentences, text.defers].flatMap((sentence) => listed(`${group}: ${text.heading}`, sentence)),
    );
  return [
    ...[...EMERGENCY_TEXTS, AED_TEXT].flatMap((sentence) => listed('emergency block', sentence)),
    ...texts('first steps', FIRST_STEP_TEXTS),
    ...texts('stay safe', STAY_SAFE_TEXTS),
    ...HAZARD_KINDS.flatMap(({ name, advice, source }) => listed(`hazard: ${name}`, says(advice, source))),
    ...CLEARING_TEXTS.flatMap((caution) => listed(`before cutting: ${caution.about}`, caution)),
    ...listed('before cutting: law', CLEARING_DEFERS),
  ];
}
