/** The criteria of an approach: needles on the final, heights, the missed approach and the gates. */
import type { ApproachFacts } from "../approach/facts.ts";
import type { TestStandard } from "../standard/test-standard.ts";
import { doubtOfHeight } from "./altitude.ts";
import { gateCriteria, needleUntold } from "./approach-gates.ts";
import { HEIGHTS, wholeUnless } from "./approach-heights.ts";
import { secondsBeyond } from "./beyond.ts";
import type { Criterion, Found } from "./criterion.ts";

type Approach = TestStandard["approach"];

/** A path by the altimeter, which the standard may hold in feet instead of in scale. */
const barometric = ({ guidance }: ApproachFacts, { barometricPath }: Approach): boolean =>
  guidance.kind === "lnav-vnav" && barometricPath !== null;

const FINAL: readonly Criterion<ApproachFacts>[] = [
  {
    id: "approach-needle",
    title: "Needle on the final, worst",
    unit: "share",
    limit: ({ approach }) => approach.needle,
    find(facts, limit, { approach }): Found {
      const untold = needleUntold(facts);
      if (untold) return { cannotTell: untold };
      const { max, doubt95, maxUtc: worstUtc, unseen } = facts.needle;
      const found = {
        value: Math.abs(max),
        doubt95,
        beyond: secondsBeyond(limit, facts.needle, facts.judged),
        worstUtc,
        unseen,
        ...wholeUnless(facts),
        ...(facts.joinedFrom === "not-joined" ? { notWhole: "final-never-joined" } : {}),
      };
      const linear = facts.guidance.halfAngleDeg === null;
      return approach.briefly && linear ? { ...found, leave: { upTo: approach.briefly.limit } } : found;
    },
  },
  {
    id: "approach-glide-path",
    title: "Glide path needle, where it is farthest off with its doubt",
    unit: "share",
    limit: ({ approach }) => approach.glidePath,
    find(facts, limit, { approach }): Found | null {
      const path = facts.glidePath;
      if (!path) return facts.height ? null : { cannotTell: "no-height" };
      if (path.supposed || barometric(facts, approach)) return null;
      // off beyond doubt anywhere is off; within it is only where no moment may be off
      const { surest, widest } = path;
      const { needle, doubt95, utc } = Math.abs(surest.needle) - surest.doubt95 > limit ? surest : widest;
      const out = secondsBeyond(limit, path.needle, facts.judged);
      const { unseen } = path.needle;
      return { value: Math.abs(needle), doubt95, beyond: out, worstUtc: utc, unseen, ...wholeUnless(facts) };
    },
  },
  ...(["below", "aboveLow"] as const).map(
    (side): Criterion<ApproachFacts> => ({
      id: side === "below" ? "approach-path-below" : "approach-path-above",
      title: side === "below" ? "Below the path, worst" : "Above the path from 1,000 ft down, worst",
      unit: "ft",
      limit: ({ approach }) => approach.barometricPath?.[side] ?? null,
      find(facts, _, { approach }): Found | null {
        if (!facts.glidePath || !barometric(facts, approach)) return null;
        const { below, aboveLow } = facts.glidePath;
        const extreme = side === "below" ? below : aboveLow;
        if (!extreme) return { value: 0, doubt95: 0, beyond: null, worstUtc: null, ...wholeUnless(facts) };
        const { ft, doubt95Ft, utc } = extreme;
        return {
          ...{
            value: ft,
            oneSided: true,
            doubt95: doubt95Ft,
            beyond: null,
            worstUtc: utc,
            ...wholeUnless(facts),
          },
          doubtIs: doubtOfHeight(facts),
        };
      },
    }),
  ),
];

const MISSED_TRACK: Criterion<ApproachFacts> = {
  id: "approach-missed-track",
  title: "Track of the missed approach, worst off its course",
  unit: "deg",
  limit: ({ approach }) => approach.missedTrack,
  find({ missed, outcome }): Found | null {
    if (outcome !== "missed" || !missed?.course) return null;
    const { track } = missed.course;
    if (!track) return { cannotTell: "log-silent" };
    const { worstErrorDeg, doubt95Deg: doubt95, worstUtc } = track;
    return { value: Math.abs(worstErrorDeg), doubt95, beyond: null, worstUtc };
  },
};

export const APPROACH_CRITERIA: readonly Criterion<ApproachFacts>[] = [
  ...FINAL,
  ...HEIGHTS,
  MISSED_TRACK,
  ...gateCriteria(1000),
  ...gateCriteria(500),
];
