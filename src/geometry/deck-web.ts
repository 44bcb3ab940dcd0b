/**
 * Least distance of the axis of a hole from the webs of a deck, measured level across the run, at any height
 * between the face and the top of the rib; 0 where the axis goes through a web. One unit of length.
 *
 * The webs stand `low` beside the middle of each flute at the face and `high` beside it at the top of the rib, on both
 * sides; middles are `pitch` apart. `low` and `high` are at most half a pitch.
 *
 * @param w place of the axis at the face, from the middle of the nearest flute
 * @param shift by how much the axis moves across while it rises to the top of the rib
 */
export function distanceToWeb(w: number, shift: number, low: number, high: number, pitch: number): number {
  // So far across there is a web on the way in any case: flute and web move by half a pitch at most.
  if (Math.abs(shift) >= 2 * pitch) return 0;
  const around = 1 + Math.ceil(Math.abs(shift) / pitch);
  let least = Number.POSITIVE_INFINITY;
  for (let k = -around; k <= around; k++) {
    for (let side = -1; side <= 1; side += 2) {
      const atFace = w - k * pitch - side * low;
      const atTop = w + shift - k * pitch - side * high;
      if (atFace * atTop <= 0) return 0;
      least = Math.min(least, Math.abs(atFace), Math.abs(atTop));
    }
  }
  return least;
}
