/** How far an altimeter may have been off the height of the log, row by row: more the higher, as the air between counts. */
import { altimeterDoubt95, type DescentFacts } from "./contract.ts";

/**
 * Half-widths of 95 %, ft. What the doubt at the crossing has beside the receiver, the air and the instrument (a setting
 * that is not known) is the same at every height. Null without a crossing: then nothing tells the doubt.
 */
export function heightDoubts(
  { crossing }: Pick<DescentFacts, "crossing">,
  altitudeFt: Float64Array,
): Float64Array | null {
  if (!crossing) return null;
  // what a silence at the crossing hides is no doubt of the heights that were logged
  const { doubt95Ft, unseenFt = 0 } = crossing;
  const beside = Math.max(0, (doubt95Ft - unseenFt) ** 2 - altimeterDoubt95(crossing.altitudeFt) ** 2);
  return altitudeFt.map((ft) => Math.sqrt(beside + altimeterDoubt95(ft) ** 2));
}
