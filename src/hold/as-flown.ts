/** How a published hold was flown otherwise than published: the fix, the inbound course and the side that the flight itself shows. */
import type { Course } from "../geodesy/course.ts";
import { inverse } from "../geodesy/index.ts";
import { direction, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import type { AngleSize } from "../quantity/units.ts";
import type { HoldFacts } from "./facts.ts";
import type { FoundHold } from "./found.ts";

/** Beyond its doubt so far off, the inbound course flown is another one. Chosen: half of the scale of a VOR; of 369 simulated holds flown on theirs, seeds 1 to 399, none was off by 2 degrees beyond the doubt. */
const OTHER_COURSE: AngleSize = 5;

export function asFlown(course: Course, found: FoundHold): NonNullable<HoldFacts["asFlown"]> {
  const { fix, inbound, inbound95, sure, turns } = found;
  const off = turnFrom(course.azimuth, inbound);
  return {
    fixOffNm: inverse(course.origin, fix).distance / METRES_PER_NAUTICAL_MILE,
    inboundOffDeg: off,
    inbound95Deg: inbound95,
    otherCourse: sure && Math.abs(off) - inbound95 > OTHER_COURSE,
    turns,
  };
}

/** From the entry, or the first lap, to the last. */
export const timesOfHold = ({ laps, entry }: HoldFacts): Finding["evidence"] => ({
  fromUtc: entry?.utc ?? laps[0]?.startUtc ?? null,
  toUtc: laps.at(-1)?.endUtc ?? laps.at(-1)?.outbound.toUtc ?? null,
});

/** Turned to the other side, and flown on another inbound course, where a hold was published. */
export const asFlownFindings = (facts: HoldFacts): Finding[] => [...wrongWay(facts), ...otherCourse(facts)];

function wrongWay(facts: HoldFacts): Finding[] {
  const { asFlown: flown, turns: published } = facts;
  if (!flown || flown.turns === published) return [];
  const evidence = timesOfHold(facts);
  return [{ code: "turned-wrong-way", facts: { flown: flown.turns, published }, evidence }];
}

function otherCourse({ asFlown: flown, inboundTrueDeg, laps }: HoldFacts): Finding[] {
  if (!flown?.otherCourse) return [];
  const { inboundOffDeg: offDeg, inbound95Deg: doubt95Deg = 0 } = flown;
  const first = laps.find(({ inbound }) => inbound)?.inbound?.fromUtc ?? null;
  return [
    {
      code: "other-inbound-course",
      facts: { flownTrueDeg: direction(inboundTrueDeg + offDeg), offDeg, doubt95Deg },
      evidence: { fromUtc: first, toUtc: laps.at(-1)?.endUtc ?? null },
    },
  ];
}
