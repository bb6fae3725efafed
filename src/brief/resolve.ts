/** From a draft to a brief: magnetic becomes true here, once, and clock times become moments. */
import { courseBetween, courseThrough } from "../geodesy/index.ts";
import { magneticFromTrue, trueFromMagnetic } from "../quantity/angle.ts";
import type { Issue } from "../quantity/issue.ts";
import { utcText } from "../quantity/time.ts";
import type { UtcMillis } from "../quantity/units.ts";
import { resolveApproach } from "./approach.ts";
import type { Brief, CourseExercise, Exercise, VariationUsed } from "./brief.ts";
import { windowAt } from "./clock.ts";
import type { BriefDraft, DraftCourse, DraftExercise, DraftLeg } from "./draft.ts";
import { variationOf } from "./variation.ts";

const UNKNOWN: VariationUsed = { degrees: 0, from: "unknown", model: null };

type Resolved = Omit<CourseExercise, "index" | "title" | "between" | "altitude">;

/**
 * The brief for one flight. `time` is the flight's first moment, null where the log has no times.
 *
 * A magnetic course that no variation can turn true is left out, with an error `no-variation`; a window is
 * dropped with a warning `window-without-date` where the log has no times. `index` counts the exercises that
 * are kept. Nothing is thrown for what the user wrote.
 * @throws RangeError for a time that is not finite.
 */
export function resolveBrief(draft: BriefDraft, { time }: { readonly time: UtcMillis | null }): Brief {
  if (time !== null && !Number.isFinite(time)) throw new RangeError(`invalid time: ${time}`);
  const issues: Issue[] = [...draft.issues];
  const exercises: Exercise[] = [];
  for (const drafted of draft.exercises) {
    const base = {
      index: exercises.length,
      title: drafted.title,
      between: drafted.between && time !== null ? windowAt(drafted.between, time) : null,
      altitude: drafted.altitude,
    };
    if (drafted.between && time === null) {
      const facts = { exercise: drafted.title, start: drafted.between.start, end: drafted.between.end };
      issues.push({ code: "window-without-date", severity: "warning", where: drafted.where, facts });
    }
    if (drafted.kind === "approach") {
      const approach = resolveApproach(drafted, time, issues);
      if (approach) exercises.push({ ...base, ...approach });
      else issues.push(noVariation(drafted, time));
      continue;
    }
    if (drafted.kind !== "course" && drafted.kind !== "leg") {
      exercises.push({ ...base, kind: drafted.kind });
      continue;
    }
    const resolved =
      drafted.kind === "leg" ? resolveLeg(drafted, time) : resolveCourse(drafted, time, issues);
    if (resolved) exercises.push({ ...base, ...resolved });
    else issues.push(noVariation(drafted, time));
  }
  const { title, file, source, aircraft, standard, winds, fixes } = draft;
  return { title, file, source, aircraft, standard, winds, fixes, exercises, issues };
}

function noVariation(drafted: DraftExercise, time: UtcMillis | null): Issue {
  const facts = { exercise: drafted.title, date: time === null ? null : utcText(time).slice(0, 10) };
  return { code: "no-variation", severity: "error", where: drafted.where, facts };
}

/**
 * A course to or from a fix: the geodesic through the fix with the course's true azimuth there. A course to a
 * station is the reverse of its radial, so both use the azimuth at the station.
 */
function resolveCourse(drafted: DraftCourse, time: UtcMillis | null, issues: Issue[]): Resolved | null {
  const { form, fix, scale, course: written } = drafted;
  const { used, issues: doubts } = variationOf(fix, time, drafted.where);
  const common = { kind: "course", form, fix, fromFix: null, scale } as const;
  if (written.reference === "true") {
    return {
      ...common,
      course: courseThrough(fix, written.degrees),
      magnetic: used && magneticFromTrue(written.degrees, used.degrees),
      variation: { degrees: used?.degrees ?? 0, from: "written-true", model: null },
    };
  }
  if (!used) return null;
  issues.push(...doubts);
  return {
    ...common,
    course: courseThrough(fix, trueFromMagnetic(written.degrees, used.degrees)),
    magnetic: written.degrees,
    variation: used,
  };
}

/** A leg is a line between two places and needs no variation; its magnetic course is only for the words. */
function resolveLeg({ fromFix, fix, scale, where }: DraftLeg, time: UtcMillis | null): Resolved {
  const course = courseBetween(fromFix, fix);
  const { used } = variationOf(fromFix, time, where);
  return {
    kind: "course",
    form: "leg",
    fix,
    fromFix,
    scale,
    course,
    magnetic: used && magneticFromTrue(course.azimuth, used.degrees),
    variation: used ?? UNKNOWN,
  };
}
