/** The same figures as a table, with what counts as one tolerance and whose it is. */
import {
  type HabitReport,
  habitEffect,
  habitInterval,
  habitMean,
  habitStatus,
  habitTitle,
  habitTolerance,
  habitToleranceFrom,
  habitTrend,
} from "../../../src/index.ts";
import { statusClass } from "./panels.tsx";

export function Numbers({ report }: { report: HabitReport }) {
  return (
    <section class="hsec" aria-labelledby="the-numbers">
      <h2 id="the-numbers">The numbers</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <section class="scroll" tabIndex={0} aria-label="The numbers of all habits">
        <table class="data nums">
          <thead>
            <tr>
              <th>Habit</th>
              <th class="r">Mean</th>
              <th class="r">Tolerances</th>
              <th class="r">95 %</th>
              <th class="r">Exercises</th>
              <th class="r">Flights</th>
              <th>Trend</th>
              <th>Told</th>
            </tr>
          </thead>
          <tbody>
            {report.habits.map((habit) => (
              <tr key={habit.id}>
                <th scope="row">{habitTitle(habit)}</th>
                <td class="r">{habitMean(habit)}</td>
                <td class="r">{habitEffect(habit)}</td>
                <td class="r">{habitInterval(habit)}</td>
                <td class="r">{habit.exercises}</td>
                <td class="r">{habit.flights}</td>
                <td>{habitTrend(habit)}</td>
                <td class={statusClass(habit)}>{habitStatus(habit)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <h3>What counts as one tolerance</h3>
      <ul class="fine tolerances">
        {report.habits.map((habit) => (
          <li key={habit.id}>
            <b>{habitTitle(habit)}:</b> {habitTolerance(habit)}; {habitToleranceFrom(habit)}.
          </li>
        ))}
      </ul>
    </section>
  );
}
