/** Why an arc was left, as findings: of the drift that was the worst, and of each excursion that is told of. */
import { seenOf } from "../quantity/excursion-record.ts";
import type { Finding } from "../quantity/record.ts";
import type { AngleSize, Knots, TurnDegrees } from "../quantity/units.ts";
import { type CausedExcursion, windCause } from "../track/index.ts";
import type { ArcFacts } from "./arc-facts.ts";
import type { ArcCorrection } from "./arc-wind.ts";

/** An excursion with its causes, and the wind correction that it was flown with. */
export interface ArcExcursion extends CausedExcursion {
  readonly correction: ArcCorrection | null;
}

/** How the worst came about, and why, as far as the wind is known. */
export function driftFindings({ drift, turns, windOutKt }: ArcFacts): Finding[] {
  if (!drift) return [];
  const side = drift.byNm > 0 ? "outside" : "inside";
  const found: Finding = {
    code: "arc-drifted",
    facts: {
      side,
      byNm: Math.abs(drift.byNm),
      seconds: drift.seconds,
      nmPerMin: Math.abs(drift.nmPerMin),
      windNmPerMin: drift.windNmPerMin,
    },
    evidence: { fromUtc: drift.fromUtc, toUtc: drift.toUtc },
  };
  const { flownDeg, neededDeg, doubt95Deg } = drift;
  if (flownDeg === null || neededDeg === null || doubt95Deg === null || windOutKt === null) return [found];
  /** The left of an arc that turns right. */
  const left = (side === "outside") === (turns === "right");
  const cause = windCause(
    { side: left ? "left" : "right" },
    { flown: flownDeg, needed: neededDeg, doubt95: doubt95Deg },
  );
  const windOut = drift.windNmPerMin === null ? windOutKt : drift.windNmPerMin * 60;
  const why = cause && {
    code: `arc-${cause}`,
    facts: windFacts(turns, flownDeg, neededDeg, doubt95Deg, windOut),
    evidence: found.evidence,
  };
  return why ? [found, why] : [found];
}

/** Degrees away from the station positive. */
const windFacts = (
  turns: ArcFacts["turns"],
  flown: TurnDegrees,
  needed: TurnDegrees,
  doubt95: AngleSize,
  windOut: Knots,
): Finding["facts"] => {
  const outward = turns === "right" ? -1 : 1;
  return {
    flownOutDeg: flown * outward,
    neededOutDeg: needed * outward,
    doubt95Deg: doubt95,
    windOutKt: windOut,
  };
};

/** Why the track left the tangent, where the drift that was the worst does not tell it of the same time. */
export function excursionCauses({ turns, drift }: ArcFacts, { record, correction }: ArcExcursion): Finding[] {
  const evidence = seenOf(record);
  if (drift && drift.fromUtc <= evidence.toUtc && drift.toUtc >= evidence.fromUtc) return [];
  const wind =
    correction &&
    windFacts(turns, correction.flown, correction.needed, correction.doubt95, correction.windOut);
  return record.causes.map(({ cause }) => ({
    code: `arc-${cause}`,
    facts: { ...wind },
    evidence,
  }));
}
