import { INTERVAL_PERCENT, INTERVAL_WORDS } from '../domain/interval-level.ts';
import type { Backtest, BacktestScore, ForecasterName, PartBacktest } from '../ratings/ratings.ts';
import { besideTestWords } from './beside-words.ts';
import { calibration } from './drawing/calibration.ts';
import { FORECASTER_WORDS } from './ratings-words.ts';

/** The back-test as a table, a picture and a verdict. */
export interface BacktestView {
  /** "43 events and 1,160 bags". */
  readonly of: string;
  readonly rows: readonly {
    readonly name: string;
    readonly note: string;
    /** Root mean square error on the log scale, and as the factor it is. */
    readonly error: string;
    readonly factor: string;
    readonly rank: string;
    readonly coverage: string;
  }[];
  readonly verdict: string;
  readonly drawing: string;
  /** "Of ten bags 8.1 lay inside the interval that should hold 8." */
  readonly coverageWords: string;
  /** The same picture for each bag part. */
  readonly parts: readonly { readonly name: string; readonly drawing: string; readonly words: string }[];
  /** Whether the draw was as fair as a lottery, and what other terms would have done. */
  readonly besides: readonly string[];
}

/** Makes the back-test readable. */
export function backtestView(backtest: Backtest, partName: (part: string) => string = (part) => part): BacktestView {
  const { scores } = backtest;
  const told = backtest.calibration.map(
    ({ stated, happened }) => `stated ${percent(stated)}, happened ${percent(happened)}`,
  );
  const model = scores.find(({ name }) => name === 'model');
  return {
    of: `${backtest.events.toLocaleString('en-GB')} events and ${backtest.sessions.toLocaleString('en-GB')} bags`,
    rows: scores.map((score) => ({
      ...FORECASTER_WORDS[score.name],
      error: score.rootMeanSquareError.toFixed(3),
      factor: Math.exp(score.rootMeanSquareError).toFixed(2),
      rank: score.rankAgreement.toFixed(2),
      coverage: score.coverage80 === null ? 'gives none' : percent(score.coverage80),
    })),
    verdict: verdictWords(scores),
    drawing: calibration(backtest.calibration, `Stated chance against what happened: ${told.join('; ')}.`),
    coverageWords:
      model?.coverage80 === undefined || model.coverage80 === null
        ? ''
        : `Of ten bags ${(model.coverage80 * 10).toFixed(1)} lay inside the interval that should hold ${INTERVAL_PERCENT / 10}.`,
    parts: backtest.parts.map((part) => partView(part, partName(part.part))),
    besides: [...balanceWords(backtest.balance), ...backtest.besides.map(besideTestWords)],
  };
}

function partView(part: PartBacktest, name: string): BacktestView['parts'][number] {
  const told = part.calibration.map(
    ({ stated, happened }) => `stated ${percent(stated)}, happened ${percent(happened)}`,
  );
  const held =
    part.coverage80 === null
      ? ''
      : ` Of ten bags ${(part.coverage80 * 10).toFixed(1)} lay inside its ${INTERVAL_WORDS}.`;
  const some = part.isWhereAny ? ', where there is some' : '';
  return {
    name,
    drawing: calibration(part.calibration, `${name}${some}: stated chance against what happened: ${told.join('; ')}.`),
    words: `${name}${some}: ${part.sessions.toLocaleString('en-GB')} bags of ${part.events.toLocaleString('en-GB')} events.${held}`,
  };
}

/** By chance a lottery leaves this range one time in twenty. */
const ODD_Z = 1.96;

function balanceWords(balance: Backtest['balance']): string[] {
  if (balance === undefined) return [];
  if (balance === null) {
    return [
      'Whether better anglers draw better pegs cannot be told: too few were known by a reference before that year.',
    ];
  }
  const { sessions, correlation, z } = balance;
  const found = `correlation ${correlation.toFixed(2).replace('-', '−')} within events over ${sessions.toLocaleString('en-GB')} sessions, ${Math.abs(z).toFixed(1)} standard errors from none`;
  if (Math.abs(z) <= ODD_Z) return [`Better anglers did not draw better pegs than a lottery gives them (${found}).`];
  return z > 0
    ? [
        `Better anglers drew better pegs than a lottery would give them (${found}): what a peg gives and who sat on it are mixed up here.`,
      ]
    : [`Better anglers drew worse pegs than a lottery would give them (${found}).`];
}

function verdictWords(scores: readonly BacktestScore[]): string {
  const errorOf = (name: ForecasterName) => scores.find((score) => score.name === name)?.rootMeanSquareError;
  const model = errorOf('model');
  const others = (['flat', 'peg-average'] as const).flatMap((name) => {
    const error = errorOf(name);
    return error === undefined ? [] : [{ name, error }];
  });
  if (model === undefined || others.length === 0) return '';
  const beaten = others.filter(({ error }) => model < error - 0.0005);
  const named = (list: typeof others) =>
    list.map(({ name }) => `the ${FORECASTER_WORDS[name].name.toLowerCase()}`).join(' and ');
  if (beaten.length === others.length) return `The guide forecast the year better than ${named(others)}.`;
  if (beaten.length === 0)
    return `The guide forecast the year no better than ${named(others)}: treat what it says of worth as weak here.`;
  const unbeaten = others.filter((other) => !beaten.includes(other));
  return `The guide forecast the year better than ${named(beaten)}, but not than ${named(unbeaten)}.`;
}

function percent(share: number): string {
  return `${Math.round(share * 100)}%`;
}
