/** Hold or traffic circuit: both are racetracks; a circuit ends low, on a runway. */
import type { Position } from "../geodesy/position.ts";
import type { Motion } from "../track/motion.ts";
import type { FixAndCourse } from "./fix-and-course.ts";
import type { FoundLap } from "./found.ts";
import type { Ground } from "./ground.ts";

export function circuitLikeness(
  _motion: Motion,
  _ground: Ground,
  _laps: readonly FoundLap[],
  _known: FixAndCourse,
  _runways: readonly Position[],
): "hold" | "maybe" | "circuit" {
  return "hold";
}
