/** A mark on a map that takes up room: a disc about its middle. */
export interface Mark {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

const ROUNDS = 40;
/** Share of the way a mark goes back home in each round. */
const HOMING = 0.08;

/**
 * Moves marks apart that lie on one another: in every round each overlapping pair is pushed apart by half its overlap,
 * and every mark is drawn a little back to where it belongs. Marks in one place part along the x axis, the earlier one
 * to the left. Returns the new middles in the same order.
 */
export function partMarks(marks: readonly Mark[], gap: number): readonly (readonly [number, number])[] {
  const places = marks.map(({ x, y }): [number, number] => [x, y]);
  for (let round = 0; round < ROUNDS; round++) {
    const homing = round < ROUNDS / 2 ? HOMING : 0;
    for (let i = 0; i < places.length; i++) {
      const [place, home] = [places[i]!, marks[i]!];
      place[0] += (home.x - place[0]) * homing;
      place[1] += (home.y - place[1]) * homing;
    }
    for (let i = 0; i < places.length; i++) {
      for (let j = i + 1; j < places.length; j++) {
        push(places[i]!, places[j]!, marks[i]!.radius + marks[j]!.radius + gap);
      }
    }
  }
  return places;
}

function push(a: [number, number], b: [number, number], apart: number): void {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const distance = Math.hypot(dx, dy);
  if (distance >= apart) return;
  const half = (apart - distance) / 2;
  const [ux, uy] = distance === 0 ? [1, 0] : [dx / distance, dy / distance];
  a[0] -= ux * half;
  a[1] -= uy * half;
  b[0] += ux * half;
  b[1] += uy * half;
}
