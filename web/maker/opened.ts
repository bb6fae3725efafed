/** The maker opens on the brief of the sheet, else on an empty one; what was half typed before a reload is there again. */
import { effect } from "@preact/signals";
import { briefValues, type DocumentExercise, day, UnusableInput } from "../../src/index.ts";
import { type Flight, flight, notices } from "../flight.ts";
import { intended } from "./intended.ts";
import { forgetMaking, keepMaking, keptMaking } from "./kept-making.ts";
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
import { noteReadOff } from "./read-off.ts";
import { readMaking } from "./reading.ts";
import { follow, workOut } from "./rework.ts";
import { standardChosenLast } from "./standard.ts";
import { listOf, type Values } from "./values.ts";

/** A brief from nothing: held against the usual standard, else what the reader chose, and until then against nothing. */
function emptyBrief(): Values {
  const hasUsual = flight.peek()?.standards.some(({ usual }) => usual) ?? false;
  const standard = hasUsual ? null : standardChosenLast();
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

/** The brief of the sheet as values; null where it has none that can be read. */
function valuesOn({ briefText }: Flight): Values | null {
  try {
    return briefText && briefValues(briefText.text, briefText.file);
  } catch (error) {
    if (!(error instanceof UnusableInput)) throw error;
    return null;
  }
}

/** What the sheet stands on, as it would be written here: opening alone changes nothing. */
const writtenOn = (on: Flight): string | null =>
  on.briefText && readMaking(valuesOn(on) ?? emptyBrief(), known.peek(), flightTime.peek()).usable;

export function openMaker(): void {
  const on = flight.peek();
  if (!on || history.peek()) return;
  void startLists();
  start(keptMaking(on) ?? valuesOn(on) ?? emptyBrief());
  const stopFollowing = follow(on, writtenOn(on));
  const stopKeeping = effect(() => {
    if (history.value) keepMaking(on, values.value);
  });
  const stopLeaving = leaveWithFlight(on.opened);
  unfollow = () => {
    stopKeeping();
    stopLeaving();
    return stopFollowing();
  };
}

/** After a reload: what was typed last before it is worked out too, where its moment had not come yet. */
export async function takeUpKept(on: Flight): Promise<void> {
  const kept = keptMaking(on);
  if (!kept) return;
  await startLists(); // fixes may be taken from them
  if (history.peek() || flight.peek()?.opened !== on.opened) return;
  const { usable, draft } = readMaking(kept, known.peek(), flightTime.peek());
  await workOut(on, writtenOn(on), { text: usable, standard: draft?.standard ?? null });
}

/** Once the brief stands on the sheet, what could not be read of it is not kept any longer; until then all of it is. */
export async function closeMaker(): Promise<void> {
  const ending = unfollow?.();
  unfollow = null;
  stop();
  // The maker may have been opened again meanwhile: what is kept then is of another making.
  if ((await ending) !== false && !history.peek()) forgetMaking();
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
  if (meant.inboundWithinDeg) noteReadOff(meant.exercise, meant.inboundWithinDeg);
  addExercise(
    meant.exercise,
    `${exercise.title} is now exercise ${listOf(values.peek().exercises).length + 1} of the brief.`,
    meant.fixes,
  );
  const now = `${exercise.title} is now an exercise of the brief.`;
  said.value = meant.assumed ? `${now} ${meant.assumed}` : now;
}
