/** One flight, read from top to bottom like a report. */
import { useMemo } from "preact/hooks";
import { createCursor, FlightPlan } from "../drawings/index.ts";
import type { Flight } from "../flight.ts";
import { Exercise } from "./exercise.tsx";
import { ExerciseBody } from "./exercise-body.tsx";
import { Foot } from "./foot.tsx";
import { Head } from "./head.tsx";
import type { NextHoldOf } from "./hold-body.tsx";
import { LineUp } from "./line-up.tsx";
import { NotCompared } from "./not-compared.tsx";
import { OtherFlights } from "./other-flights.tsx";
import { Remarks } from "./remarks.tsx";
import { RouteOffers } from "./route-offers.tsx";
import { WindOfTheFlight } from "./wind.tsx";

interface Props {
  readonly flight: Flight;
  /** Takes a hold to the panel for the next one. */
  readonly nextHold?: NextHoldOf;
}

export function Sheet({ flight, nextHold }: Props) {
  const { document, series } = flight;
  const cursor = useMemo(createCursor, [flight]);
  return (
    <>
      <Head flight={flight} />
      <p class="caution">{document.caution}</p>
      <RouteOffers flight={flight} />
      <OtherFlights flight={flight} />
      <LineUp exercises={document.exercises} series={series} />
      <figure class="above" aria-label="The flight from above">
        <FlightPlan document={document} series={series} cursor={cursor} />
        <figcaption>
          The whole flight from above, north-up. Numbers are those of the exercises.
          {document.exercises.some(({ kind, facts }) => kind === "hold" && facts) &&
            " Dotted: each hold in still air."}
        </figcaption>
      </figure>
      {document.exercises.map((exercise, i) => {
        const columns = series.exercises[i];
        return exercise.facts && columns ? (
          <Exercise key={`${exercise.title} ${exercise.startUtc}`} number={i + 1} exercise={exercise}>
            <ExerciseBody
              exercise={exercise}
              columns={columns}
              flight={flight}
              cursor={cursor}
              nextHold={nextHold}
            />
          </Exercise>
        ) : null;
      })}
      <NotCompared exercises={document.exercises} />
      <WindOfTheFlight document={document} series={series} />
      <Remarks document={document} />
      <Foot document={document} />
    </>
  );
}
