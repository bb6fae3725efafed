/** How a pilot flies an established course: the heading aimed at, and what happened on the way. */
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type {
  AngleSize,
  Metres,
  MetresPerSecond,
  Seconds,
  Share,
  TrueDegrees,
  TurnDegrees,
} from "../quantity/units.ts";
import type { Random } from "./random.ts";
import type { Habit } from "./script.ts";
import type { Sight } from "./sight.ts";

/** What the pilot has before the eyes, and the wind correction that the course needs. */
export interface Moment {
  readonly sight: Sight;
  readonly speed: MetresPerSecond;
  readonly needed: TurnDegrees;
}

/** A thing that the script made happen, for the truth. */
export type EventCode =
  | "established"
  | "turned-onto"
  | "rolled-out"
  | "wind-correction-let-go"
  | "wind-correction-overdone"
  | "corrected"
  | "back-on-course"
  | "needle-reversal";
export type Note = (code: EventCode) => void;

/** The heading to aim at, asked for at each step after the course was established. */
export type Steersman = (m: Moment) => TrueDegrees;

/** Time constants of the return to a course, seconds: joining it, and keeping it. Tuned to look like a calm pilot. */
const JOINING = 15;
const KEEPING = 25;
/** From the decision to turn until the track has turned, seconds: roll lag and half the turn. Tuned on the period of the swings. */
const TURN_DELAY = 8;

/** The cut toward the course of a return that dies away exponentially, degrees to be taken off the heading. */
function softCut(across: Metres, speed: MetresPerSecond, time: Seconds, most: AngleSize): TurnDegrees {
  const cut = Math.atan(across / (speed * time)) * DEGREES_PER_RADIAN;
  return Math.max(-most, Math.min(most, cut));
}

/** The heading that joins a course. */
export const joining = (m: Moment, most: AngleSize): TrueDegrees =>
  m.sight.course + m.needed - softCut(m.sight.across, m.speed, JOINING, most);

/** The heading that keeps a course, with a share of the wind correction. */
export const keeping = (m: Moment, share: Share): TrueDegrees =>
  m.sight.course + share * m.needed - softCut(m.sight.across, m.speed, KEEPING, 10);

export function steersman(habit: Habit, established: Seconds, random: Random, note: Note): Steersman {
  switch (habit.habit) {
    case "tidy":
      return (m) => keeping(m, m.sight.time - established < habit.delay ? 0 : habit.share);
    case "waits":
      return waits(habit, established, note);
    case "chases":
      return chases(habit, random, note);
    case "drifts":
      return drifts(habit, note);
    case "beside":
      return beside(habit);
  }
}

type Of<Name> = Extract<Habit, { readonly habit: Name }>;

function waits(habit: Of<"waits">, established: Seconds, note: Note): Steersman {
  let phase: "tidy" | "held" | "cutting" | "after" = "tidy";
  return (m) => {
    const { course, across, needle, time } = m.sight;
    if (phase === "tidy" && time - established >= habit.tidyFor) {
      phase = "held";
      note(habit.share > 1 ? "wind-correction-overdone" : "wind-correction-let-go");
    } else if (phase === "held" && Math.abs(needle) >= habit.correctsAt) {
      phase = "cutting";
      note("corrected");
    } else if (phase === "cutting" && Math.abs(across) < m.speed * 2) {
      phase = "after";
      note("back-on-course");
    }
    switch (phase) {
      case "tidy":
        return keeping(m, 1);
      case "held":
        return course + habit.share * m.needed;
      case "cutting":
        return course + m.needed - softCut(across, m.speed, 3, habit.cut);
      case "after":
        return keeping(m, habit.thenShare);
    }
  };
}

function drifts(habit: Of<"drifts">, note: Note): Steersman {
  let cutting = false;
  return (m) => {
    const { course, across, needle } = m.sight;
    if (!cutting && Math.abs(needle) >= habit.correctsAt) {
      cutting = true;
      note("corrected");
    } else if (cutting && Math.abs(across) < m.speed * 2) {
      cutting = false;
      note("back-on-course");
    }
    return cutting
      ? course + m.needed - softCut(across, m.speed, 3, habit.cut)
      : course + habit.share * m.needed;
  };
}

function beside(habit: Of<"beside">): Steersman {
  return (m) => {
    const { across, needle } = m.sight;
    // the wind that asks for a correction to the right pushes to the left
    const wanted = needle === 0 ? 0 : -Math.sign(m.needed) * habit.needle * (across / needle);
    return keeping({ ...m, sight: { ...m.sight, across: across - wanted } }, 1);
  };
}

function chases(habit: Of<"chases">, random: Random, note: Note): Steersman {
  const reaction = Math.max(1, habit.period / 4 - TURN_DELAY);
  let toward = 0;
  let seen = 0;
  let seenAt: Seconds = -Infinity;
  let size = habit.cut;
  return (m) => {
    const { course, across, time } = m.sight;
    if (Math.sign(across) !== seen) {
      seen = Math.sign(across);
      seenAt = time;
    }
    if (seen !== toward && time - seenAt >= reaction) {
      toward = seen;
      size = habit.cut * (0.8 + 0.4 * random.uniform());
      note("needle-reversal");
    }
    return course + habit.share * m.needed - toward * size;
  };
}
