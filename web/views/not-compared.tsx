/** Exercises of the brief without figures, listed plainly with why. */
import { type DocumentExercise, whyNotMeasured } from "../../src/index.ts";

export function NotCompared({ exercises }: { exercises: readonly DocumentExercise[] }) {
  const left = exercises.map((exercise, i) => ({ exercise, number: i + 1 })).filter((e) => !e.exercise.facts);
  if (left.length === 0) return null;
  return (
    <section class="leftout" aria-labelledby="not-compared">
      <h3 id="not-compared">Not flown or not compared</h3>
      <ul class="fine">
        {left.map(({ exercise, number }) => (
          <li key={number}>
            {number}, {exercise.title}: {whyNotMeasured(exercise)}.
          </li>
        ))}
      </ul>
    </section>
  );
}
