/** First letters of the months, January first, as the row under a drawing of the year. */
export const MONTH_LETTERS = 'JFMAMJJASOND';
