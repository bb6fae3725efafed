/** How a published hold was flown otherwise than published: the fix, the inbound course and the side that the flight itself shows. */
import type { Course } from "../geodesy/course.ts";
import { inverse } from "../geodesy/index.ts";
import { direction, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import type { AngleSize, TrueDegrees } from "../quantity/units.ts";
import type { HoldFacts } from "./facts.ts";
import type { FoundHold } from "./found.ts";

/** Beyond its doubt so far off, the inbound course flown is another one. Chosen: half of the scale of a VOR; of 369 simulated holds flown on theirs, seeds 1 to 399, none was off by 2 degrees beyond the doubt. */
const OTHER_COURSE: AngleSize = 5;
/** A lap that came to the fix within this of that course, beyond its doubt, was flown on it. Chosen: what a heading wanders and the wind changes from lap to lap. */
const LAP_OFF: AngleSize = 5;

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

/** Turned to the other side, and flown on another inbound course, where a hold was published; `tracks`: on what each lap came to the fix. */
export const asFlownFindings = (facts: HoldFacts, tracks: readonly (TrueDegrees | null)[]): Finding[] => [
  ...wrongWay(facts),
  ...otherCourse(facts, tracks),
];

function wrongWay(facts: HoldFacts): Finding[] {
  const { asFlown: flown, turns: published } = facts;
  if (!flown || flown.turns === published) return [];
  const evidence = timesOfHold(facts);
  return [{ code: "turned-wrong-way", facts: { flown: flown.turns, published }, evidence }];
}

/** Said of the laps that came to the fix on it; the others are named with what they came on. */
function otherCourse(facts: HoldFacts, tracks: readonly (TrueDegrees | null)[]): Finding[] {
  const { asFlown: flown, inboundTrueDeg, laps } = facts;
  if (!flown?.otherCourse) return [];
  const { inboundOffDeg: offDeg, inbound95Deg: doubt95Deg = 0 } = flown;
  const flownTrueDeg = direction(inboundTrueDeg + offDeg);
  const back = laps.flatMap(({ inbound }, i) => {
    const track = tracks[i] ?? null;
    const off = track === null ? null : turnFrom(flownTrueDeg, track);
    return inbound ? [{ ...inbound, lap: i + 1, off }] : [];
  });
  const on = back.filter(({ off }) => off !== null && Math.abs(off) <= Math.hypot(doubt95Deg, LAP_OFF));
  const others = back.filter(({ off }) => off !== null).filter((lap) => !on.includes(lap));
  const offs = others.map(({ off }) => off!).sort((a, b) => a - b);
  const numbers = (some: readonly { readonly lap: number }[]) => some.map(({ lap }) => lap).join(" ");
  const part = {
    laps: numbers(on),
    otherLaps: numbers(others),
    othersFromTrueDeg: offs.length > 0 ? direction(flownTrueDeg + offs[0]!) : null,
    othersToTrueDeg: offs.length > 0 ? direction(flownTrueDeg + offs.at(-1)!) : null,
  };
  const shown = on.length > 0 ? on : back;
  return [
    {
      code: "other-inbound-course",
      facts: { flownTrueDeg, offDeg, doubt95Deg, ...(on.length < back.length ? part : {}) },
      evidence: {
        fromUtc: shown[0]?.fromUtc ?? null,
        toUtc: shown.at(-1)?.toUtc ?? laps.at(-1)?.endUtc ?? null,
      },
    },
  ];
}
