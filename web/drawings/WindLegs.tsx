/** The wind leg by leg as north-up arrows under each other, 10 kt = 5 mm. */
import { clock, type DocumentLeg, trueDirection, windName } from "./contract.ts";
import { WindArrow } from "./WindArrow.tsx";

/** The arrow for one leg, for a row of a table of the page. */
export function WindLegArrow({ leg }: { leg: DocumentLeg }) {
  return <WindArrow wind={leg.wind} trackTrueDeg={leg.trackTrueDeg} />;
}

/** A list of its own, where the page has no table for it. */
export function WindLegs({ legs }: { legs: readonly DocumentLeg[] }) {
  return (
    <ul class="wind-legs">
      {legs.map((leg) => (
        <li key={leg.startUtc}>
          <WindLegArrow leg={leg} />
          <span>
            {clock(leg.startUtc)} to {clock(leg.endUtc)},{" "}
            {leg.kind === "straight" ? `track ${trueDirection(leg.trackTrueDeg)}` : "turn"}:{" "}
            {windName(leg.wind)}
          </span>
        </li>
      ))}
    </ul>
  );
}
