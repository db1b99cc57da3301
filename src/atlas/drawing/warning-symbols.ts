import type { SignSymbol } from './sign-symbol.ts';

/**
 * Symbols of the warning signs in a field of 100 × 90 below a triangle with corners at 50,6, 96,85 and 4,85. Our own
 * drawing from plain strokes; the meaning of each shape follows the register of ISO 7010.
 */
export const WARNING_SYMBOLS: Readonly<Record<string, SignSymbol>> = {
  // An exclamation mark.
  W001: { fill: 'M45,30Q50,26 55,30L52.5,60H47.5z', dots: [[50, 69, 4.6]] },
  // A walker whose foot meets a block on the floor.
  W007: {
    fill: 'M60,70h13v9h-13zM20,76h50v3h-50z',
    strokes: [
      [6.5, 'M49,44L43,58'],
      [4.5, 'M43,58L55,62L57,71M43,58L35,66L27,66M48,47L58,53M48,47L38,50'],
    ],
    dots: [[54, 36, 5]],
  },
  // A figure falling from the edge of a drop.
  W008: {
    fill: 'M19,60H41V79H19z',
    strokes: [
      [6.5, 'M54,48L47,58'],
      [4.5, 'M47,58L39,52L33,55M47,58L51,66L46,71M54,48L63,45M54,48L60,56'],
    ],
    dots: [[60, 40, 5]],
  },
  // Three open rings about a fourth.
  W009: {
    strokes: [
      [4.6, 'M56.7,38.6A10,10 0 1,1 43.3,38.6M62.6,72.0A10,10 0 1,1 69.3,60.4M30.7,60.4A10,10 0 1,1 37.4,72.0'],
      [2.6, 'M50,49.5A7.5,7.5 0 1,1 49.9,49.5z'],
    ],
  },
  // A six-armed crystal of snow.
  W010: {
    strokes: [
      [
        3.6,
        'M50,32V76M31,43L69,65M31,65L69,43M44,36L50,42L56,36M44,72L50,66L56,72M31.5,50L40,48.5L37,40.5M68.5,58L60,59.5L63,67.5M31.5,58L40,59.5L37,67.5M68.5,50L60,48.5L63,40.5',
      ],
    ],
  },
  // A figure losing its feet on a level surface.
  W011: {
    fill: 'M22,75h56v4h-56z',
    strokes: [
      [6.5, 'M46,45L50,58'],
      [4.5, 'M50,58L62,60L70,69M50,58L57,68L66,72M47,47L37,51L34,58M47,47L57,47L62,41M30,70L38,71M34,64L41,66'],
    ],
    dots: [[44, 36, 5]],
  },
  // A bolt ending in an arrow head.
  W012: { fill: 'M56,27L38,54H49.5L45.5,68L40.5,66L45,80L57,71.5L51.5,70L61,47H49.5L63,27z' },
  // A walker whose head meets a beam.
  W020: {
    fill: 'M43,34H67V41H43z',
    strokes: [
      [6.5, 'M47,54L45,64'],
      [4.5, 'M45,64L53,70L52,79M45,64L38,72L31,75M47,55L57,60M47,55L38,61'],
      [2.6, 'M39,42L36,39M40,37L39,33'],
    ],
    dots: [[47, 46, 5]],
  },
  // Three strands with barbs.
  W033: {
    strokes: [
      [3.2, 'M37,46H63M30,59H70M22,72H78'],
      [
        2.8,
        'M45,42L49,50M49,42L45,50M55,42L59,50M59,42L55,50M38,55L42,63M42,55L38,63M50,55L54,63M54,55L50,63M62,55L66,63M66,55L62,63M30,68L34,76M34,68L30,76M44,68L48,76M48,68L44,76M58,68L62,76M62,68L58,76M70,68L74,76M74,68L70,76',
      ],
    ],
  },
  // A bull seen from the side, horns up.
  W034: {
    fill: 'M29,58Q31,54 38,55L53,52Q58,48 62,53L68,57Q71,61 69,66L65,67L62,64L59,66L58,78H54.5L53.5,69L42,68L41,78H37.5L36,69L33,78H29.5L31,66z',
    strokes: [[2.4, 'M62,54Q61,48 65,47M66,56Q71,54 69.5,49M30,58L26.5,65']],
  },
  // Pieces coming down from above.
  W035: {
    fill: 'M40,40l8,-3l3,7l-8,3zM55,50l7,-5l5,7l-7,5zM37,56l9,1l-1,9l-9,-1zM20,75h60v4h-60z',
    strokes: [[2.6, 'M43,29L44,34M59,38L60,42M40,48L40.5,52M54,62l4,9M48,69l2,3M63,62l1,3']],
  },
  // A figure breaking through a sheet of ice.
  W043: {
    fill: 'M17,66H40L37,71H14zM60,66H83L86,71H63z',
    strokes: [
      [6.5, 'M50,48V62'],
      [4.5, 'M50,50L40,56L34,51M50,50L60,56L66,51'],
      [3, 'M40,71L44,78L50,72L56,79L60,71'],
    ],
    dots: [[50, 39, 5.4]],
  },
  // A figure in water up to its raised arms.
  W047: {
    strokes: [
      [6.5, 'M50,51V60'],
      [4.5, 'M49,51L40,45L37,37M51,51L60,45L63,37'],
      [3.4, 'M25,64q5,-5 10,0t10,0t10,0t10,0t10,0M21,72q5,-5 10,0t10,0t10,0t10,0t10,0t10,0'],
    ],
    dots: [[50, 42, 5.4]],
  },
  // A swimmer above a sharp thing under the surface.
  W049: {
    fill: 'M36,79L43,66L50,72L57,63L66,79z',
    strokes: [
      [3.4, 'M27,58q5,-5 10,0t10,0t10,0t10,0t7,-2'],
      [5, 'M37,52L50,47L58,51'],
    ],
    dots: [[61, 46, 4.8]],
  },
  // A figure at the brink of a quay, water below.
  W051: {
    fill: 'M18,58H54V79H14z',
    strokes: [
      [6.5, 'M48,39V47'],
      [4.2, 'M48,47L44,57M48,47L53,56M48,40L41,46M48,40L56,44'],
      [3, 'M58,72q4,-4 8,0t8,0t8,0M58,78q4,-4 8,0t8,0t8,0'],
    ],
    dots: [[49, 31, 4.4]],
  },
  // A figure on a ledge that comes away.
  W052: {
    fill: 'M16,59H46L50,66L45,72L48,79H13zM53,60L68,63L63,73L55,70z',
    strokes: [
      [6.5, 'M55,41L52,48'],
      [4.2, 'M52,48L49,57M52,48L59,56M54,42L46,44M55,42L63,46'],
      [2.6, 'M70,71l2,5M62,77l1,2'],
    ],
    dots: [[58, 33, 4.4]],
  },
};
