/** A log that holds several flights: this one is on the sheet, the others are one click away. */
import { clock, day } from "../../src/index.ts";
import type { Flight } from "../flight.ts";
import { openOther } from "../opening.ts";

export function OtherFlights({ flight }: { flight: Flight }) {
  const { flights, flight: shown } = flight.document.log;
  if (flights.length < 2) return null;
  return (
    <section class="fine save screen" aria-label="Flights in this log">
      <p>
        The log holds {flights.length} flights. This is number {shown + 1}.
      </p>
      <ul>
        {flights.map(({ startUtc, endUtc, farthestNm }, i) => (
          <li key={startUtc ?? i}>
            {startUtc && endUtc
              ? `${day(startUtc)}, ${clock(startUtc)} to ${clock(endUtc)} UTC`
              : `Flight ${i + 1}`}
            , up to {farthestNm.toFixed(farthestNm < 10 ? 1 : 0)} NM away{" "}
            {i === shown ? (
              <b>on this sheet</b>
            ) : (
              <button type="button" onClick={() => void openOther(i)}>
                Show this one
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
