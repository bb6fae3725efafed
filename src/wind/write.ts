/** A wind fact in the form of the document. */
import type { WindRecord } from "./record.ts";
import type { WindFact } from "./wind.ts";

/** The JSON form; the ellipse is left out where direction and speed are not both known: what is believed of the rest was not put to the proof by the flight. */
export function windRecord(fact: WindFact): WindRecord {
  const { ellipse95 } = fact;
  return {
    knowledge: fact.knowledge,
    fromTrueDeg: fact.from,
    speedKt: fact.speed,
    alongKt: fact.along,
    acrossKt: fact.across,
    along95Kt: fact.along95,
    across95Kt: fact.across95,
    ellipse95Kt:
      fact.knowledge === "full"
        ? { majorKt: ellipse95.major, minorKt: ellipse95.minor, majorTrueDeg: ellipse95.majorAxis }
        : null,
    tasKt: fact.trueAirspeed,
    tas95Kt: fact.trueAirspeed95,
    restsOn: fact.restsOn,
  };
}
