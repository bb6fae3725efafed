/** Exercises of a log whose heights are on 1013.25 hPa: the doubt against the altimeter is that of the day's setting, and it is said. */
import type { DescentFacts } from "../course/descent-facts.ts";
import type { Finding } from "../quantity/record.ts";
import type { Feet } from "../quantity/units.ts";
import { PRESSURE_HEIGHT_95 } from "../track/index.ts";

type Untold = { fact: string; reason: string };

const REASON = "height-is-pressure";
const widened = (doubt95: number): number => Math.hypot(doubt95, PRESSURE_HEIGHT_95);

/** The facts of a course, an arc or a hold; as they are where there are no heights. */
export function heldOnPressure<
  F extends { altitude: { altimeter95Ft: number } | null; cannotTell: Untold[] },
>(facts: F): F {
  const { altitude } = facts;
  if (!altitude) return facts;
  return {
    ...facts,
    altitude: { ...altitude, altimeter95Ft: widened(altitude.altimeter95Ft) },
    cannotTell: [...facts.cannotTell, { fact: "altitude", reason: REASON }],
  };
}

/** The facts and findings of a descent, whose crossing is no height by GPS. */
export function descendedOnPressure<M extends { facts: DescentFacts; findings: Finding[] }>(measured: M): M {
  const { facts, findings } = measured;
  const { crossing, lowest } = facts;
  if (!crossing) return measured;
  const { unseenFt = 0 } = crossing;
  const doubt95Ft = widened(crossing.doubt95Ft - unseenFt) + unseenFt;
  const lowest95Ft = lowest ? widened(lowest.doubt95Ft) : 0;
  return {
    ...measured,
    facts: {
      ...facts,
      crossing: { ...crossing, doubt95Ft },
      ...(lowest ? { lowest: { ...lowest, doubt95Ft: lowest95Ft } } : {}),
      cannotTell: [
        ...facts.cannotTell.filter(({ reason }) => reason !== "gps-height"),
        { fact: "crossing", reason: REASON },
      ],
    },
    findings: findings.map((f) => {
      if (lowest && "underFt" in f.facts) return byPressure(f, lowest.underFt, lowest95Ft);
      return "doubt95Ft" in f.facts ? byPressure(f, crossing.overFt, doubt95Ft) : f;
    }),
  };
}

const byPressure = (f: Finding, offFt: Feet, doubt95Ft: Feet): Finding => ({
  ...f,
  facts: { ...f.facts, doubt95Ft, sure: Math.abs(offFt) > doubt95Ft, by: "pressure" },
});
