/** When a turn onto a line is over: turned slowly from a row on, and for a while. */
import type { DegreesPerSecond, Seconds } from "../quantity/units.ts";
import type { AgainstCourse } from "./against-course.ts";

/** Turning slower than this is rolled out, when it stays so for as long. Tuned: wander of 2 degrees over 20 s stays under. */
const STEADY: DegreesPerSecond = 1;
const STEADY_FOR: Seconds = 4;

/** Whether the rows from one on turn no more; false where they end too soon to tell. */
export function steadyFrom(
  rows: Pick<AgainstCourse, "length" | "timeMs" | "turnRate">,
  row: number,
): boolean {
  for (let i = row; i < rows.length; i++) {
    if (rows.timeMs[i]! - rows.timeMs[row]! > STEADY_FOR * 1000) return true;
    if (!(Math.abs(rows.turnRate[i]!) < STEADY)) return false;
  }
  return false;
}
