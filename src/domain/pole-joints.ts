/**
 * Where the joints of a pole lie, from its tip: the top kit's end, then that of each section put on behind it. They are set so
 * that they meet the lines of the trade (top kit + 2 at 5 m, 11, 13 and 16 m); a pole's own lie within half a metre of these, as
 * makers differ (common practice, no source).
 */
export const POLE_JOINTS_METRES = [2.5, 3.75, 5, 6.5, 8, 9.5, 11, 13, 14.5, 16] as const;
