/** What keeps coming back: what to practise next, every habit at one scale, and the numbers. */

import type { ComponentChildren } from "preact";
import { useMemo } from "preact/hooks";
import {
  CAUTION,
  chooseFlights,
  type FlightChoice,
  HABITS_RULES,
  habitsHead,
  habitsOf,
  type ObservedFlight,
  type Shown,
} from "../../../src/index.ts";
import { habitsChoice } from "../../habits-choice.ts";
import { Choosing } from "./choosing.tsx";
import { Numbers } from "./numbers.tsx";
import { Panels } from "./panels.tsx";
import { PilotByPilot } from "./pilots.tsx";
import { Practising } from "./practising.tsx";

export interface HabitsProps {
  /** Of `observeFlight(document, { id, pilot, aircraft })`: small, so that thousands fit. */
  readonly flights: readonly ObservedFlight[];
  /** Where a flight shows a habit, by its id, the exercise and the moment; without it flights are named but lead nowhere. */
  readonly address?: (id: string, exercise: number, at: Shown | undefined) => string;
  /** What is offered for flights without a pilot's name, which are taken as one pilot's; given their ids. */
  readonly naming?: (ids: readonly string[]) => ComponentChildren;
}

function standingChoice(flights: readonly ObservedFlight[], choice: FlightChoice): FlightChoice {
  const known = (of: "pilot" | "aircraft") => flights.some((flight) => flight[of] === choice[of]);
  return {
    ...choice,
    pilot: (known("pilot") && choice.pilot) || null,
    aircraft: (known("aircraft") && choice.aircraft) || null,
  };
}

export function Habits({ flights, address, naming }: HabitsProps) {
  const asked = habitsChoice.value;
  // names that no flight has any more choose nothing
  const choice = useMemo(() => standingChoice(flights, asked), [flights, asked]);
  const choose = (to: FlightChoice) => {
    habitsChoice.value = to;
  };
  const chosen = useMemo(() => chooseFlights(flights, choice), [flights, choice]);
  const report = useMemo(() => habitsOf(chosen), [chosen]);
  return (
    <div class="habits">
      <header class="head alone">
        <h1 tabIndex={-1}>What keeps coming back</h1>
        <p class="what">
          {habitsHead(report)} {HABITS_RULES}
        </p>
      </header>
      <p class="caution">{CAUTION}</p>
      <Choosing flights={flights} choice={choice} choose={choose} />
      <PilotByPilot flights={chosen} choose={(pilot) => choose({ ...choice, pilot })} />
      <Practising report={report} {...(address ? { address } : {})} {...(naming ? { naming } : {})} />
      {report.habits.length > 0 && (
        <>
          <Panels report={report} />
          <Numbers report={report} />
        </>
      )}
      <footer class="foot">
        <p>
          Worked out by Hindtrack from the debriefs of these flights. An exercise counts once, whatever its
          length; a hold counts by the mean of its laps. Nothing left this machine.
        </p>
      </footer>
    </div>
  );
}
