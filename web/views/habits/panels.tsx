/** Every habit as a small drawing, all at one scale, the largest first. */
import {
  type Habit,
  type HabitReport,
  habitMean,
  habitSides,
  habitStatus,
  habitTitle,
  habitTolerance,
} from "../../../src/index.ts";
import { HabitPanel } from "../../drawings/index.ts";

/** The words of a status in their weight: beyond is bold, not known italic, too few grey. */
export const statusClass = ({ status }: Habit): string =>
  ({ beyond: "v-not", habit: "v-habit", small: "", "cannot-tell": "v-cannot", "too-few": "v-un" })[status];

function Panel({ habit, flights }: { habit: Habit; flights: number }) {
  const mean = habitMean(habit);
  return (
    <figure class="sm">
      <figcaption>
        <b>{habitTitle(habit)}</b>
        <span>{habitTolerance(habit)}</span>
      </figcaption>
      <HabitPanel habit={habit} flights={flights} title={habitTitle(habit)} sides={habitSides(habit)} />
      <p class="fine">
        <span class={statusClass(habit)}>{habitStatus(habit)}</span>
        {mean && `: ${mean}`}
      </p>
    </figure>
  );
}

export function Panels({ report }: { report: HabitReport }) {
  const flights = report.flights.length;
  return (
    <section class="hsec" aria-labelledby="all-habits">
      <h2 id="all-habits">All habits, one scale</h2>
      <p class="fine">
        Every panel runs from twice the tolerance above to twice below; flights stand in order, 1 to {flights}
        ; a dot is one exercise with its doubt, an arrow one that is farther out. Hachures: beyond the
        tolerance; grey: too small to matter. At the right the robust mean with its 95 % interval. A dashed
        line: a trend that the flights bear out. Largest first; hollow dots: not enough yet, nothing said.
      </p>
      <div class="panels">
        {report.habits.map((habit) => (
          <Panel key={habit.id} habit={habit} flights={flights} />
        ))}
      </div>
    </section>
  );
}
