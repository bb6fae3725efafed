/** What may come back when turns end, by the side that was turned to. */
import type { DebriefDocument, DocumentExercise } from "../debrief/document.ts";
import type { AngleSize } from "../quantity/units.ts";
import { type Measured, meanOf, type Tendency } from "./tendency.ts";

/** FAA-S-ACS-8C IV.A: headings within 10 degrees, from memory. */
const HEADING: AngleSize = 10;
/** How well a log tells the end of a turn: the wander of the direction held after it. Chosen. */
const HELD_95: AngleSize = 3;

/** A tidy turn comes to rest so far past by the wander of the hand alone. Tuned: the mean of tidy turns on simulation seeds 1 to 160. */
const WANDER: AngleSize = 2;

/** A turn that ended so shortly before an exercise led onto it, ms. Chosen: an exercise is matched from its roll-out on. */
const LED_ONTO = 5000;

/** The large turns onto and in an exercise: how far past the direction that was held then, beyond what wander makes. */
const turnsOf =
  (side: 1 | -1) =>
  ({ startUtc, endUtc }: DocumentExercise, { legs }: DebriefDocument): Measured | null => {
    if (startUtc === null || endUtc === null) return null;
    const [start, end] = [Date.parse(startUtc), Date.parse(endUtc)];
    return meanOf(
      legs.map((leg) => {
        const ended = Date.parse(leg.endUtc);
        const here = ended >= start - LED_ONTO && ended <= end && Math.sign(leg.turnDeg) === side;
        return here && typeof leg.pastDeg === "number"
          ? { value: leg.pastDeg - WANDER, doubt95: HELD_95 }
          : null;
      }),
    );
  };

const turned = (id: string, side: 1 | -1): Tendency => ({
  id,
  kind: null,
  unit: "deg",
  oneSided: true,
  tolerance: () => HEADING,
  measure: turnsOf(side),
});

export const TURN_TENDENCIES: readonly Tendency[] = [
  turned("roll-out-left", -1),
  turned("roll-out-right", 1),
];
