/** How a pilot flies an established course: the heading aimed at, and what happened on the way. */

import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { Metres, MetresPerSecond, Seconds, TrueDegrees, TurnDegrees } from "../quantity/units.ts";
import type { Random } from "./random.ts";
import type { Habit } from "./script.ts";
import type { Sight } from "./sight.ts";

/** What the pilot has before the eyes, and the wind correction that the course needs. */
export interface Moment {
  readonly time: Seconds;
  readonly sight: Sight;
  readonly speed: MetresPerSecond;
  readonly needed: TurnDegrees;
}

/** A thing that the script made happen, for the truth. */
export type EventCode =
  | "established"
  | "wind-correction-let-go"
  | "wind-correction-overdone"
  | "corrected"
  | "back-on-course"
  | "needle-reversal";
export type Note = (code: EventCode) => void;

/** Distance in which a displaced aircraft comes back, as seconds of flight. Tuned to look like a calm pilot. */
const INTERCEPT_TIME = 15;
const TRACKING_TIME = 40;
/** Time from the decision to turn until the track has turned, seconds: roll lag and half the turn; tuned. */
const TURN_DELAY = 5.5;

/** The cut, degrees toward the course, of an exponential return. */
export function softCut(across: Metres, speed: MetresPerSecond, time: Seconds, most: number): TurnDegrees {
  const cut = Math.atan(across / (speed * time)) * DEGREES_PER_RADIAN;
  return Math.max(-most, Math.min(most, cut));
}

export const interceptCut = (m: Moment, most: number): TurnDegrees =>
  softCut(m.sight.across, m.speed, INTERCEPT_TIME, most);

/** A function that gives, at each moment after `established`, the heading to aim at. */
export function fly(
  habit: Habit,
  established: Seconds,
  random: Random,
  note: Note,
): (m: Moment) => TrueDegrees {
  const tidy = (m: Moment, share: number) =>
    m.sight.course + share * m.needed - softCut(m.sight.across, m.speed, TRACKING_TIME, 10);

  if (habit.habit === "tidy") return (m) => tidy(m, m.time - established < habit.delay ? 0 : habit.share);

  if (habit.habit === "waits") {
    let phase: "tidy" | "held" | "cutting" | "after" = "tidy";
    return (m) => {
      const needle = Math.abs(m.sight.needle);
      if (phase === "tidy" && m.time - established >= habit.tidyFor) {
        phase = "held";
        note(habit.share > 1 ? "wind-correction-overdone" : "wind-correction-let-go");
      } else if (phase === "held" && needle >= habit.correctsAt) {
        phase = "cutting";
        note("corrected");
      } else if (
        phase === "cutting" &&
        Math.abs(softCut(m.sight.across, m.speed, TRACKING_TIME / 2, 90)) < 5
      ) {
        phase = "after";
        note("back-on-course");
      }
      if (phase === "tidy") return tidy(m, 1);
      if (phase === "held") return m.sight.course + habit.share * m.needed;
      if (phase === "cutting") return m.sight.course + m.needed - Math.sign(m.sight.across) * habit.cut;
      return tidy(m, habit.thenShare);
    };
  }

  const reaction = Math.max(1, habit.period / 4 - TURN_DELAY);
  let side = 0;
  let seen = 0;
  let seenAt = -Infinity;
  let size = habit.cut;
  return (m) => {
    const now = Math.sign(m.sight.across);
    if (now !== seen) {
      seen = now;
      seenAt = m.time;
    }
    if (seen !== side && m.time - seenAt >= reaction) {
      side = seen;
      size = habit.cut * (0.8 + 0.4 * random.uniform());
      note("needle-reversal");
    }
    return m.sight.course + habit.share * m.needed - side * size;
  };
}
