/** What was flown, for who knows what was meant: each straight line, hold and final is one click away from being an exercise. */
import { clock, type DocumentExercise } from "../../src/index.ts";
import type { Flight } from "../flight.ts";
import { flownWithoutBrief } from "./flown-found.ts";
import { goToChosen } from "./keyboard.ts";
import { canBeMeant } from "./maker.tsx";
import { values } from "./making.ts";
import { mean } from "./opened.ts";
import { exercisesOf } from "./reading.ts";

/** Whether more than half of it was flown within an exercise of the brief. */
function isMeant({ startUtc, endUtc }: DocumentExercise, { document }: Flight): boolean {
  if (!startUtc || !endUtc) return false;
  const [from, to] = [Date.parse(startUtc), Date.parse(endUtc)];
  return document.exercises.some(({ source, startUtc: start, endUtc: end }) => {
    if (source !== "brief" || !start || !end) return false;
    return Math.min(to, Date.parse(end)) - Math.max(from, Date.parse(start)) > (to - from) / 2;
  });
}

export function Flown({ flight }: { flight: Flight }) {
  const found = flownWithoutBrief(flight).value.filter((one) => canBeMeant(one) && !isMeant(one, flight));
  if (found.length === 0) return null;
  const isFirst = exercisesOf(values.value).length === 0;
  return (
    <section aria-labelledby="brief-flown">
      <h3 id="brief-flown">{isFirst ? "What was flown: which of it was meant?" : "What was flown"}</h3>
      <ul class="fine save flown-list">
        {found.map((exercise) => (
          <li key={`${exercise.title} ${exercise.startUtc}`}>
            <button
              type="button"
              onClick={() => {
                mean(exercise);
                goToChosen();
              }}
              aria-label={`Add ${exercise.title} to the brief`}
            >
              Add
            </button>{" "}
            {exercise.startUtc &&
              exercise.endUtc &&
              `${clock(exercise.startUtc)} to ${clock(exercise.endUtc)}, `}
            {exercise.title}
          </li>
        ))}
      </ul>
    </section>
  );
}
