/** An exercise that was not found on the flight: not flown, or not seen, on every line of it. */
import type { Exercise } from "../brief/brief.ts";
import { gradeApproach, gradeArc, gradeCourse, gradeDescent, gradeHold } from "../grade/index.ts";
import type { Verdict } from "../grade/verdict.ts";
import type { Finding } from "../quantity/record.ts";
import type { TestStandard } from "../standard/test-standard.ts";
import type { ExerciseResult, Flight } from "./exercise-result.ts";
import { type Flown, told } from "./flown.ts";

function notFlown(kind: Exercise["kind"], standard: TestStandard): Verdict[] {
  switch (kind) {
    case "course":
      return gradeCourse(null, standard);
    case "arc":
      return gradeArc(null, standard);
    case "descent":
      return gradeDescent(null, standard);
    case "approach":
      return gradeApproach(null, standard);
    case "hold":
      return gradeHold(null, standard);
  }
}

/** What was seen and was not what the brief asked for: that was not flown. */
const FLOWN_OTHERWISE = new Set(["flown-other-way", "held-otherwise"]);

/** Not found on this flight; `why`: the reason that it may have been flown all the same, or what was flown in its place. */
export function unmeasured(
  exercise: Exercise,
  flown: Flown,
  flight: Flight,
  why: Finding | null,
): ExerciseResult {
  const { kind, title } = exercise;
  const { standard } = flight;
  const verdicts = standard ? notFlown(kind, standard) : [];
  const record = {
    ...told(title, "brief", flown, flight),
    facts: null,
    findings: why ? [why] : [],
    verdicts: verdicts.map((v) =>
      why && !FLOWN_OTHERWISE.has(why.code) ? { ...v, verdict: "cannot tell" as const, reason: why.code } : v,
    ),
    whatWouldHaveWorked: null,
  };
  return { record: { kind, ...record }, series: null };
}
