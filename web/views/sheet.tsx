/** One flight, read from top to bottom like a report. */
import type { Flight } from "../flight.ts";
import { Exercise } from "./exercise.tsx";
import { Foot } from "./foot.tsx";
import { Head } from "./head.tsx";
import { LineUp } from "./line-up.tsx";
import { NotCompared } from "./not-compared.tsx";
import { Remarks } from "./remarks.tsx";
import { RouteOffers } from "./route-offers.tsx";
import { WindOfTheFlight } from "./wind.tsx";

export function Sheet({ flight }: { flight: Flight }) {
  const { document, series } = flight;
  return (
    <>
      <Head flight={flight} />
      <p class="caution">{document.caution}</p>
      <RouteOffers flight={flight} />
      <LineUp exercises={document.exercises} />
      {document.exercises.map((exercise, i) => {
        const columns = series.exercises[i];
        return exercise.facts && columns ? (
          <Exercise
            key={exercise.title}
            number={i + 1}
            exercise={exercise}
            facts={exercise.facts}
            columns={columns}
            flight={flight}
          />
        ) : null;
      })}
      <NotCompared exercises={document.exercises} />
      <WindOfTheFlight document={document} series={series} />
      <Remarks document={document} />
      <Foot document={document} />
    </>
  );
}
