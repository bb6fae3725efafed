/** The wind leg by leg as north-up arrows under each other, 10 kt = 5 mm. */
import type { DocumentLeg } from "./contract.ts";
import { WindArrow } from "./WindArrow.tsx";
import { clockText, directionText, windText } from "./words.ts";

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
            {clockText(Date.parse(leg.startUtc))} to {clockText(Date.parse(leg.endUtc))},{" "}
            {leg.kind === "straight" ? `track ${directionText(leg.trackTrueDeg, "T")}` : "turn"}:{" "}
            {windText(leg.wind)}
          </span>
        </li>
      ))}
    </ul>
  );
}
