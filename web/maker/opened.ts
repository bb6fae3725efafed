/** The maker opens on the brief of the sheet, else on an empty one; what was half typed before a reload is there again. */
import { effect } from "@preact/signals";
import { briefValues, type DocumentExercise, day, UnusableInput } from "../../src/index.ts";
import { flight, notices } from "../flight.ts";
import { intended } from "./intended.ts";
import {
  addExercise,
  flightTime,
  freeIdent,
  history,
  ownPoints,
  said,
  start,
  stop,
  values,
} from "./making.ts";
import { known, startLists } from "./points.ts";
import { readMaking } from "./reading.ts";
import { follow } from "./rework.ts";
import { standardChosenLast } from "./standard.ts";
import { listOf, type Values } from "./values.ts";

/** The half-typed brief of one flight, kept against a reload. */
const KEPT = "hindtrack brief in the making";

const flightKey = (): string => {
  const log = flight.peek()?.document.log;
  return log ? `${log.file} ${log.startUtc} ${log.flight}` : "";
};

function keptValues(): Values | null {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? "null") as {
      flight: string;
      values: Values;
    } | null;
    return kept?.flight === flightKey() ? kept.values : null;
  } catch {
    return null;
  }
}

function keepValues(now: Values | null): void {
  try {
    if (now) localStorage.setItem(KEPT, JSON.stringify({ flight: flightKey(), values: now }));
    else localStorage.removeItem(KEPT);
  } catch {
    // A browser that keeps nothing says so when the flight is opened.
  }
}

/** A brief from nothing: held against what the reader chose, and until then against nothing. */
function emptyBrief(): Values {
  const standard = standardChosenLast();
  return {
    brief: 1,
    title: `Lesson of ${day(new Date(flightTime.peek() ?? Date.now()).toISOString())}`,
    ...(standard ? { standard } : {}),
    fixes: {},
    exercises: [],
  };
}

/** Ends the following of the sheet; tells whether the last change stands. */
let unfollow: (() => Promise<boolean>) | null = null;

/** Another flight came onto the sheet: its brief is another. What was half typed stays kept for the one before. */
function leaveWithFlight(opened: number): () => void {
  return effect(() => {
    if (flight.value?.opened === opened) return;
    void unfollow?.();
    unfollow = null;
    stop();
  });
}

export function openMaker(): void {
  const on = flight.peek();
  if (!on || history.peek()) return;
  startLists();
  let now = emptyBrief();
  try {
    if (on.briefText) now = briefValues(on.briefText.text, on.briefText.file);
  } catch (error) {
    if (!(error instanceof UnusableInput)) throw error;
  }
  start(keptValues() ?? now);
  // What the sheet stands on, as it would be written here: opening alone changes nothing.
  const text = on.briefText ? readMaking(now, known.peek(), flightTime.peek()).usable : null;
  const stopFollowing = follow(on, text);
  const stopKeeping = effect(() => {
    if (history.value) keepValues(values.value);
  });
  const stopLeaving = leaveWithFlight(on.opened);
  unfollow = () => {
    stopKeeping();
    stopLeaving();
    return stopFollowing();
  };
}

/** Once the brief stands on the sheet, what could not be read of it is not kept any longer; until then all of it is. */
export async function closeMaker(): Promise<void> {
  const ending = unfollow?.();
  unfollow = null;
  stop();
  // The maker may have been opened again meanwhile: what is kept then is of another making.
  if ((await ending) !== false && !history.peek()) keepValues(null);
}

/** What was flown becomes what was meant; the maker opens on it where it was closed. */
export function mean(exercise: DocumentExercise): void {
  openMaker();
  const meant = intended(exercise, {
    points: [...ownPoints.peek(), ...known.peek().points],
    time: flightTime.peek(),
    freeIdent: freeIdent(),
  });
  if (!meant) {
    notices.value = [`${exercise.title} cannot be taken over: write it as an exercise of the brief.`];
    return;
  }
  addExercise(
    meant.exercise,
    `${exercise.title} is now exercise ${listOf(values.peek().exercises).length + 1} of the brief.`,
    meant.fixes,
  );
  const now = `${exercise.title} is now an exercise of the brief.`;
  said.value = meant.assumed ? `${now} ${meant.assumed}` : now;
}
