import { linesSurveyOf, linesSurveyWords, NO_LINE_ON_MAP } from '../domain/lines-survey.ts';
import { lineDistanceWords } from '../domain/overhead-line-words.ts';
import { type Peg, pegKey } from '../domain/peg.ts';
import { type Atlas, surveyOfPeg, waterOf } from './atlas.ts';

/** What every map of a water says of overhead lines. */
export function linesOfMapWords(atlas: Atlas, waterId: string): string {
  const { settings, waters } = atlas.venue;
  const hasLine = waters.some(({ map }) => map.overheadLines.length > 0);
  return `${hasLine ? '' : `${NO_LINE_ON_MAP} `}${linesSurveyWords(linesSurveyOf(waterOf(atlas, waterId), settings))}`;
}

/** What every sheet says of overhead lines, near one or not: how far the nearest is, and who looked. */
export function linesOfPegWords(atlas: Atlas, peg: Peg): string {
  const { standOffs, lines } = surveyOfPeg(atlas, pegKey(peg.water, peg.peg));
  const nearest = standOffs.map(({ mappedMetres }) => mappedMetres).sort((a, b) => a - b)[0];
  const words = linesOfMapWords(atlas, peg.water);
  const isTold = lines.some(({ source }) => source !== 'map');
  if (nearest === undefined) return isTold ? `${words} This peg’s own record knows of one.` : words;
  return `Nearest line on the club’s map: ${lineDistanceWords(nearest, atlas.venue.settings.units)}. ${words}`;
}
