/** Where the track left the final: from established on its course to the end of what is judged. */
import type { NauticalMiles } from "../quantity/units.ts";
import { type ExcursionRows, findExcursions } from "../track/index.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

/** On a final the needle tells of less than on a course. Tuned: thrice what wander of 2 degrees over 20 s makes at 90 kt. */
const TOLD_LEAST: NauticalMiles = 0.03;

export function finalExcursions(
  rows: ApproachRows,
  { established, final: { start, end } }: Pick<Segments, "established" | "final">,
): ExcursionRows[] {
  // never established before the end of what is judged, it is judged as far as it was flown
  const joined = established !== null && established < end - 1 ? established : start;
  return findExcursions(rows, { start: joined, end }, { toldLeast: TOLD_LEAST });
}
