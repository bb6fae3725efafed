/** An approach of a brief: from its keys to a draft, and what can be wrong with it. */
import { alongAcrossExact, courseBetween, type Position } from "../geodesy/index.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Fact } from "../quantity/issue.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { THRESHOLD_CROSSING } from "../standard/approach-guidance.ts";
import type { ApproachExercise, Fix, Runway, StepDown } from "./brief.ts";
import { readDirection } from "./direction.ts";
import type { DraftApproach } from "./draft.ts";
import { samePlace } from "./same-place.ts";
import type { Path } from "./text.ts";
import type { WrittenApproach } from "./written.ts";

/** Keys of an approach that hold idents of fixes. */
export const APPROACH_IDENTS = ["final_fix", "missed_to", "station"] as const;

/** A final fix lies no farther out, and no farther off the final course. Chosen: wider than any published final, narrower than a slip of a digit. */
const MOST_BEFORE: NauticalMiles = 25;
const MOST_ASIDE: NauticalMiles = 3;

const placeOf = ([latitude, longitude]: readonly [number, number]): Position => ({ latitude, longitude });

/** Null where a fix that it names is not known; that is noted by the look-up. */
export function draftApproach(
  written: WrittenApproach["approach"],
  base: Pick<DraftApproach, "between" | "altitude" | "where">,
  lookup: (ident: string, at: Path) => Fix | null,
): DraftApproach | null {
  let unknown = false;
  const fixAt = (ident: string | undefined, at: Path): Fix | null => {
    if (ident === undefined) return null;
    const fix = lookup(ident, at);
    if (fix === null) unknown = true;
    return fix;
  };
  const finalFix = fixAt(written.final_fix, ["final_fix"]);
  const missedTo = fixAt(written.missed_to, ["missed_to"]);
  const named = fixAt(written.station, ["station"]);
  const steps = (written.step_downs ?? []).map((step, i) => ({
    step,
    fix: fixAt(step.fix, ["step_downs", i, "fix"]),
  }));
  if (unknown) return null;
  const { ident = null, threshold, end, elevation_ft, length_assumed } = written.runway;
  const runway: Runway = {
    ident,
    threshold: placeOf(threshold),
    end: placeOf(end),
    elevation: elevation_ft,
    ...(length_assumed && { lengthAssumed: length_assumed }),
  };
  const kind = written.guidance;
  const angle = written.glide_path_deg;
  return {
    ...base,
    kind: "approach",
    title: titleOf(written, finalFix),
    runway,
    course: written.course === undefined ? null : readDirection(written.course),
    guidance: {
      kind,
      width: written.width_deg ?? null,
      antenna: written.antenna_ft ?? null,
      station: named ?? (kind === "vor" && finalFix?.kind === "vor" ? finalFix : null),
      rnp: written.rnp_nm ?? null,
    },
    finalFix,
    finalFixAltitude: written.final_fix_ft ?? base.altitude,
    glidePath:
      angle === undefined ? null : { angle, crossing: written.threshold_crossing_ft ?? THRESHOLD_CROSSING },
    minimum: minimumOf(written),
    stepDowns: samePlace(runway.threshold, runway.end)
      ? []
      : steps
          .map(({ step, fix }): StepDown => {
            const distance = fix ? beforeThreshold(runway, fix).before : (step.before_nm ?? Number.NaN);
            return { name: fix?.ident ?? `${step.before_nm} NM`, distance, altitude: step.not_below_ft };
          })
          .sort((a, b) => b.distance - a.distance),
    missedPoint: written.missed_point_nm ?? 0,
    missedTo,
    missedCourse: written.missed_course === undefined ? null : readDirection(written.missed_course),
  };
}

function minimumOf({ decision_ft, minimum_ft }: WrittenApproach["approach"]): ApproachExercise["minimum"] {
  // both: told as a problem; the draft is dropped then
  if (decision_ft !== undefined && minimum_ft !== undefined)
    return { kind: "decision", altitude: Number.NaN };
  if (decision_ft !== undefined) return { kind: "decision", altitude: decision_ft };
  return minimum_ft === undefined ? null : { kind: "descent", altitude: minimum_ft };
}

const GUIDANCE_WORDS: Readonly<Record<WrittenApproach["approach"]["guidance"], string>> = {
  localizer: "localizer",
  vor: "VOR",
  lnav: "LNAV",
  lpv: "LPV",
  "lnav-vnav": "LNAV/VNAV",
  rnp: "RNP",
  "centre-line": "extended centre line",
};

function titleOf({ runway, guidance }: WrittenApproach["approach"], finalFix: Fix | null): string {
  const to = runway.ident === undefined ? "Approach" : `Approach runway ${runway.ident}`;
  return `${to}${finalFix ? ` over ${finalFix.ident}` : ""}, ${GUIDANCE_WORDS[guidance]}`;
}

/** How far a place lies before the threshold along the centre line, and off it, right positive. */
function beforeThreshold(
  { threshold, end }: Runway,
  place: Position,
): { readonly before: NauticalMiles; readonly aside: NauticalMiles } {
  const { along, across } = alongAcrossExact(courseBetween(threshold, end), place);
  return { before: -nauticalMilesFromMetres(along), aside: nauticalMilesFromMetres(across) };
}

/** What is wrong with an approach whose keys are each right. */
export function approachProblems(
  draft: DraftApproach,
): { readonly code: string; readonly at: Path; readonly facts: Record<string, Fact> }[] {
  const { runway, guidance, finalFix, minimum, stepDowns } = draft;
  const problems: { code: string; at: Path; facts: Record<string, Fact> }[] = [];
  if (samePlace(runway.threshold, runway.end)) {
    problems.push({ code: "brief-runway-without-length", at: ["runway", "end"], facts: {} });
    return problems;
  }
  if (minimum && Number.isNaN(minimum.altitude))
    problems.push({ code: "brief-two-minimums", at: ["minimum_ft"], facts: {} });
  if (guidance.kind === "vor" && guidance.station === null)
    problems.push({ code: "brief-vor-without-station", at: ["guidance"], facts: {} });
  if (stepDowns.some((step) => Number.isNaN(step.distance)))
    problems.push({ code: "brief-step-down-without-place", at: ["step_downs"], facts: {} });
  if (finalFix) {
    const { before, aside } = beforeThreshold(runway, finalFix);
    const offset = draft.course !== null; // an offset course may pass well beside the centre line
    if (before <= 0 || before > MOST_BEFORE || (!offset && Math.abs(aside) > MOST_ASIDE)) {
      const tenth = (nm: number) => Math.round(nm * 10) / 10;
      problems.push({
        code: "brief-final-fix-misplaced",
        at: ["final_fix"],
        facts: {
          fix: finalFix.ident,
          beforeNm: tenth(before),
          asideNm: tenth(Math.abs(aside)),
          mostNm: MOST_BEFORE,
          mostAsideNm: MOST_ASIDE,
        },
      });
    }
  }
  return problems;
}
