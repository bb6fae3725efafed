/** In words how the height that was held was come to at first, and that it was climbed or descended all along. */
import type { CourseFacts, HoldFacts } from "../../debrief/document.ts";
import { feet, seconds } from "./measured.ts";
import { clockSeconds } from "./number.ts";

type Height = NonNullable<CourseFacts["altitude"] | HoldFacts["altitude"]>;

/** As in "Climbed from 2,510 ft in the first 3 min 5 s; the height is judged from 09:14:20 UTC on."; null where there is nothing to say. */
export function heightReachedNote(altitude: Height | null): string | null {
  if (!altitude) return null;
  const { reached, onPurpose, targetFt, lowestFt, highestFt } = altitude;
  if (onPurpose && targetFt !== null) {
    const [from, to] = onPurpose === "climb" ? [lowestFt, highestFt] : [highestFt, lowestFt];
    const way = onPurpose === "climb" ? "Climbed" : "Descended";
    return `${way} all along, from ${feet(from)} to ${feet(to)}, toward the briefed ${feet(targetFt)} and never there: whether it would have been held is not judged.`;
  }
  if (!reached) return null;
  const way = reached.way === "climb" ? "Climbed" : "Descended";
  const long = reached.seconds === null ? " at first" : ` in the first ${seconds(reached.seconds)}`;
  const from = reached.utc === null ? "where that was over" : `${clockSeconds(reached.utc)} UTC`;
  const { level } = reached;
  const elsewhere = level
    ? ` Before that it was flown level at about ${feet(level.altitudeFt)}${level.seconds === null ? "" : ` for ${seconds(level.seconds)}`}.`
    : "";
  return `${way} from ${feet(reached.fromFt)}${long}; the height is judged from ${from} on.${elsewhere}`;
}
