/** What may come back when turns end, by the side that was turned to. */
import type { DebriefDocument, DocumentExercise, DocumentLeg } from "../debrief/document.ts";
import { turnFrom } from "../quantity/angle.ts";
import type { AngleSize } from "../quantity/units.ts";
import { type Measured, meanOf, shownAt, type Tendency } from "./tendency.ts";

/** FAA-S-ACS-8C IV.A: headings within 10 degrees, from memory. */
const HEADING: AngleSize = 10;
/** How well a log tells the end of a turn: the wander of the direction held after it. Chosen. */
const HELD_95: AngleSize = 3;

/** A tidy turn comes to rest so far past by the wander of the hand alone. Tuned: the mean of tidy turns on simulation seeds 1 to 250 is 1.6 to 2.3. */
const WANDER: AngleSize = 2;

/** A smaller turn is a correction, and no roll-out is aimed at. Chosen, as where the end of a turn is measured. */
const LARGE: AngleSize = 45;
/** A turn that ended so shortly before an exercise belongs to it, ms. Chosen: an exercise is matched from its roll-out on. */
const ONTO = 5000;
/** A turn leads onto the next exercise if that begins within so long, with no other turn between, ms. Chosen: three miles at 100 kt. */
const LED_ONTO = 120_000;

interface Flown {
  readonly exercise: DocumentExercise;
  readonly start: number;
  readonly end: number;
}

const endOf = (turn: DocumentLeg): number => Date.parse(turn.endUtc);

/** The exercise that a turn belongs to: of those that were flown when it ended the one begun last, else the one that it led onto. */
function exerciseOf(turn: DocumentLeg, next: DocumentLeg | undefined, flown: readonly Flown[]) {
  const ended = endOf(turn);
  const within = flown.filter(({ start, end }) => ended >= start - ONTO && ended <= end);
  if (within.length > 0) return within.reduce((a, b) => (b.start > a.start ? b : a)).exercise;
  const ahead = flown.filter(({ start }) => start > ended && start <= ended + LED_ONTO);
  const first = ahead.reduce<Flown | null>((a, b) => (a && a.start <= b.start ? a : b), null);
  return first && !(next && endOf(next) <= first.start) ? first.exercise : null;
}

/**
 * Whether a turn was ended at a heading. One onto the inbound course of a hold, onto an arc or onto a final ends by the
 * needle: it is meant to go past where the roll-out is off, to come back.
 */
function endsAtHeading(turn: DocumentLeg, { kind, facts }: DocumentExercise): boolean {
  if (kind !== "hold" || !facts) return kind === "course" || kind === "descent";
  return Math.abs(turnFrom(facts.inboundTrueDeg, turn.trackTrueDeg + turn.turnDeg)) > 90;
}

/** The large turns onto and in an exercise: how far past the direction that was held then, beyond what wander makes. */
const turnsOf =
  (side: 1 | -1) =>
  (exercise: DocumentExercise, { legs, exercises }: DebriefDocument): Measured | null => {
    const large = legs.filter(({ kind, turnDeg }) => kind === "turn" && Math.abs(turnDeg) >= LARGE);
    const flown = exercises.flatMap(({ startUtc, endUtc }, i): Flown[] =>
      startUtc === null || endUtc === null
        ? []
        : [{ exercise: exercises[i]!, start: Date.parse(startUtc), end: Date.parse(endUtc) }],
    );
    return meanOf(
      large.map((turn, i) =>
        typeof turn.pastDeg === "number" &&
        Math.sign(turn.turnDeg) === side &&
        exerciseOf(turn, large[i + 1], flown) === exercise &&
        endsAtHeading(turn, exercise)
          ? {
              ...{ value: turn.pastDeg - WANDER, doubt95: HELD_95 },
              at: shownAt(turn.startUtc, turn.endUtc),
            }
          : null,
      ),
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
