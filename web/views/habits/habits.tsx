/** What keeps coming back: what to practise next, every habit at one scale, and the numbers. */

import type { ComponentChildren } from "preact";
import { useMemo, useState } from "preact/hooks";
import {
  CAUTION,
  chooseFlights,
  type FlightChoice,
  HABITS_RULES,
  habitsHead,
  habitsOf,
  type ObservedFlight,
} from "../../../src/index.ts";
import { Choosing } from "./choosing.tsx";
import { Numbers } from "./numbers.tsx";
import { Panels } from "./panels.tsx";
import { Practising } from "./practising.tsx";

export interface HabitsProps {
  /** Of `observeFlight(document, { id, pilot, aircraft })`: small, so that thousands fit. */
  readonly flights: readonly ObservedFlight[];
  /** Where the sheet of a flight is, by its id; without it flights are named but lead nowhere. */
  readonly address?: (id: string) => string;
  /** What is offered for flights without a pilot's name, which are taken as one pilot's; given their ids. */
  readonly naming?: (ids: readonly string[]) => ComponentChildren;
}

export function Habits({ flights, address, naming }: HabitsProps) {
  const [choice, choose] = useState<FlightChoice>({});
  const report = useMemo(() => habitsOf(chooseFlights(flights, choice)), [flights, choice]);
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
