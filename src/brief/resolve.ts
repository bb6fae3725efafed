/** From a draft to a brief: magnetic becomes true here, once, and clock times become moments. */
import { courseBetween, courseThrough } from "../geodesy/index.ts";
import { trueFromMagnetic, turnFrom } from "../quantity/angle.ts";
import type { Issue, Where } from "../quantity/issue.ts";
import { magneticCourse, UNKNOWN_VARIATION, type VariationUsed } from "../quantity/magnetic.ts";
import { utcText } from "../quantity/time.ts";
import type { UtcMillis } from "../quantity/units.ts";
import { resolveApproach } from "./approach-course.ts";
import type { ArcExercise, Brief, CourseExercise, Exercise, Fix, HoldExercise } from "./brief.ts";
import { windowAt } from "./clock.ts";
import type { WrittenDirection } from "./direction.ts";
import type { BriefDraft, DraftArc, DraftCourse, DraftExercise, DraftHold, DraftLeg } from "./draft.ts";
import { variationOf, writtenTrue } from "./variation.ts";

type Own<E> = Omit<E, "index" | "title" | "between" | "altitude">;

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
    const own = resolveExercise(drafted, time, issues);
    if (own) exercises.push({ ...base, ...own });
    else issues.push(noVariation(drafted, time));
  }
  const { title, file, source, aircraft, standard, winds, fixes } = draft;
  return { title, file, source, aircraft, standard, winds, fixes, exercises, issues };
}

function noVariation(drafted: DraftExercise, time: UtcMillis | null): Issue {
  const facts = { exercise: drafted.title, date: time === null ? null : utcText(time).slice(0, 10) };
  return { code: "no-variation", severity: "error", where: drafted.where, facts };
}

/** Null where no variation can turn its course true. */
function resolveExercise(drafted: DraftExercise, time: UtcMillis | null, issues: Issue[]) {
  switch (drafted.kind) {
    case "course":
      return resolveCourse(drafted, time, issues);
    case "leg":
      return resolveLeg(drafted, time);
    case "hold":
      return resolveHold(drafted, time, issues);
    case "arc":
      return resolveArc(drafted, time, issues);
    case "descent": {
      const { kind, fix, toAltitude, before } = drafted;
      return { kind, fix, toAltitude, before };
    }
    case "approach":
      return resolveApproach(drafted, time, issues);
  }
}

/**
 * The geodesic through a fix with the true azimuth there of a course as written. A course to a station is the
 * reverse of its radial, so courses to and from it both use the azimuth at the station.
 */
function lineThrough(
  fix: Fix,
  written: WrittenDirection,
  where: Where,
  time: UtcMillis | null,
  issues: Issue[],
): Pick<CourseExercise, "course" | "magnetic" | "variation"> | null {
  const { used, issues: doubts } = variationOf(fix, time, where);
  if (written.reference === "true") {
    const variation = writtenTrue(used);
    return {
      course: courseThrough(fix, written.degrees),
      magnetic: magneticCourse(written.degrees, variation),
      variation,
    };
  }
  if (!used) return null;
  issues.push(...doubts);
  return {
    course: courseThrough(fix, trueFromMagnetic(written.degrees, used.degrees)),
    magnetic: written.degrees,
    variation: used,
  };
}

function resolveCourse(
  { form, fix, scale, course, where }: DraftCourse,
  time: UtcMillis | null,
  issues: Issue[],
): Own<CourseExercise> | null {
  const line = lineThrough(fix, course, where, time, issues);
  return line && { kind: "course", form, fix, fromFix: null, scale, ...line };
}

function resolveHold(
  { fix, inbound, turns, leg, where }: DraftHold,
  time: UtcMillis | null,
  issues: Issue[],
): Own<HoldExercise> | null {
  const line = lineThrough(fix, inbound, where, time, issues);
  return line && { kind: "hold", fix, turns, leg, ...line };
}

/**
 * An arc lies on its station: its radials turn true by the station's own declination. A radial written true stays
 * so; one magnetic radial that no variation can turn leaves the arc out.
 */
function resolveArc(
  { fix, radius, fromRadial, toRadial, turns, where }: DraftArc,
  time: UtcMillis | null,
  issues: Issue[],
): Own<ArcExercise> | null {
  const { used, issues: doubts } = variationOf(fix, time, where);
  const written = fromRadial.reference === "true" && toRadial.reference === "true";
  if (!used && !written) return null;
  if (!written) issues.push(...doubts);
  const variation: VariationUsed = written ? writtenTrue(used) : used!;
  const inTrue = ({ degrees, reference }: WrittenDirection) =>
    reference === "true" ? degrees : trueFromMagnetic(degrees, variation.degrees);
  const [from, to] = [inTrue(fromRadial), inTrue(toRadial)];
  return {
    kind: "arc",
    fix,
    radius,
    fromRadial: from,
    toRadial: to,
    fromMagnetic: magneticCourse(from, variation),
    toMagnetic: magneticCourse(to, variation),
    variation,
    turns: turns ?? (turnFrom(from, to) > 0 ? "right" : "left"),
  };
}

/** A leg is a line between two places and needs no variation; its magnetic course is only for the words. */
function resolveLeg({ fromFix, fix, scale, where }: DraftLeg, time: UtcMillis | null): Own<CourseExercise> {
  const course = courseBetween(fromFix, fix);
  const variation = variationOf(fromFix, time, where).used ?? UNKNOWN_VARIATION;
  return {
    kind: "course",
    form: "leg",
    fix,
    fromFix,
    scale,
    course,
    magnetic: magneticCourse(course.azimuth, variation),
    variation,
  };
}
