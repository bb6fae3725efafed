/** What to practise next and why, with the flights that show it. */
import {
  flightName,
  type Habit,
  type HabitReport,
  habitProof,
  habitSentence,
  habitsWhose,
  noPractise,
  practiseNext,
  practiseSentence,
  shownBest,
} from "../../../src/index.ts";
import { bound } from "../../bound.ts";
import type { HabitsProps } from "./habits.tsx";

interface Props {
  readonly report: HabitReport;
  readonly address?: HabitsProps["address"];
  readonly naming?: HabitsProps["naming"];
}

function SeenOn({ habit, report, address }: Props & { readonly habit: Habit }) {
  if (habit.seenOn.length === 0) return null;
  return (
    <>
      {" Seen best on "}
      {habit.seenOn.map((index, i) => {
        const flight = report.flights[index]!;
        const name = flightName(report, index);
        const best = shownBest(habit, index);
        return (
          <span key={flight.id}>
            {i > 0 && ", "}
            {address && best ? (
              <a href={address(flight.id, best.exercise, best.at)}>
                {name}, exercise {best.exercise + 1}
              </a>
            ) : (
              name
            )}
          </span>
        );
      })}
      .
    </>
  );
}

export function Practising({ report, address, naming }: Props) {
  const items = practiseNext(report);
  const whose = habitsWhose(report);
  const unnamed = report.flights.flatMap(({ id, pilot }) => (pilot === null ? [id] : []));
  return (
    <section class="practising" aria-labelledby="practise-next">
      {whose !== "" && <p>{whose}</p>}
      {whose !== "" && naming?.(unnamed)}
      <h2 id="practise-next">Practise next</h2>
      {items.length === 0 && <p>{noPractise(report)}</p>}
      <ol class="practise">
        {items.map((item) => (
          <li key={item.habit.id}>
            <div>
              <p class="say">{bound(habitSentence(item.habit, item.sure))}</p>
              <p class="fine">
                {habitProof(item.habit)}
                <SeenOn habit={item.habit} report={report} {...(address ? { address } : {})} />
              </p>
            </div>
            <p class="how">
              <b>Practise:</b> {practiseSentence(item)}
            </p>
          </li>
        ))}
      </ol>
    </section>
  );
}
