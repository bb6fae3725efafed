/** One exercise of a brief, from its keys to a checked draft. */

import { turnFrom } from "../quantity/angle.ts";
import type { Issue } from "../quantity/issue.ts";
import { HOUR_MS } from "../quantity/time.ts";
import { NEEDLE_SCALES, type NeedleScale, type NeedleScaleId } from "../standard/needle.ts";
import { APPROACH_IDENTS, approachProblems, draftApproach } from "./approach.ts";
import type { Fix } from "./brief.ts";
import { windowMillis } from "./clock.ts";
import { directionText, foundType, readDirection } from "./direction.ts";
import type { DraftExercise } from "./draft.ts";
import { readHoldLeg } from "./hold-leg.ts";
import type { LookUp } from "./look-up.ts";
import { nearMiss } from "./near-miss.ts";
import { errorAt, validated } from "./problems.ts";
import { samePlace } from "./same-place.ts";
import type { Path, PlacedValues } from "./text.ts";
import { EXERCISE_SCHEMAS, type WrittenExercise } from "./written.ts";

/** The key that says what an exercise is. `leg` comes last, because a hold has a leg too. */
const KINDS = ["course", "arc", "hold", "descent", "approach", "leg"] as const;

/** An exercise takes less than this, h; windows are read to the nearest day by it. */
const LONGEST_WINDOW_H = 12;

/**
 * Reads the exercise at a path. Null when anything in it is wrong: a half-read exercise would be judged
 * against something that nobody meant. Every problem found is in `issues`.
 */
export function readExercise(
  given: unknown,
  path: Path,
  placed: PlacedValues,
  { fix: lookup, runway }: LookUp,
  issues: Issue[],
): DraftExercise | null {
  const found = errorsIn(issues);
  const schema = schemaFor(given, path, placed, issues);
  if (!schema) return null;
  const value = withRunway(given, path, runway);
  if (value === null) return null;
  const written = validated(schema, value, path, placed, issues) as WrittenExercise | null;
  if (written === null) {
    // The fixes of a wrong exercise are looked up as well, so that all its problems are told at once.
    for (const [at, ident] of identsIn(value)) lookup(ident, [...path, ...at]);
    return null;
  }
  const between = written.between ? { start: written.between[0], end: written.between[1] } : null;
  if (between) {
    const hours = windowMillis(between) / HOUR_MS;
    const wrong = (code: string, facts: Record<string, number>) =>
      issues.push(errorAt(placed, [...path, "between"], code, { ...between, ...facts }));
    if (hours === 0) wrong("brief-empty-window", {});
    // start and end in the wrong order run over midnight all but once round the clock
    if (hours > LONGEST_WINDOW_H)
      wrong("brief-window-too-long", { hours: Math.round(hours), most: LONGEST_WINDOW_H });
  }
  const base = { between, altitude: written.altitude_ft ?? null, where: placed.placeOf(path) };
  const draft = drafted(written, base, (ident, at) => lookup(ident, [...path, ...at]));
  if (draft?.kind === "leg" && samePlace(draft.fromFix, draft.fix)) {
    const facts = { from: draft.fromFix.ident, to: draft.fix.ident };
    issues.push(errorAt(placed, [...path, "leg"], "brief-leg-without-length", facts));
  }
  if (draft?.kind === "arc" && turnFrom(draft.fromRadial.degrees, draft.toRadial.degrees) === 0) {
    const facts = { from: directionText(draft.fromRadial), to: directionText(draft.toRadial) };
    issues.push(errorAt(placed, [...path, "to_radial"], "brief-arc-without-length", facts));
  }
  if (draft?.kind === "approach") {
    for (const { code, at, facts } of approachProblems(draft))
      issues.push(errorAt(placed, [...path, "approach", ...at], code, facts));
  }
  return errorsIn(issues) > found ? null : draft;
}

const errorsIn = (issues: readonly Issue[]): number =>
  issues.filter(({ severity }) => severity === "error").length;

/** The exercise with a runway that is only named written out; null where it is not known (noted by the look-up). */
function withRunway(value: unknown, path: Path, look: LookUp["runway"]): unknown {
  const { approach } = Object(value) as { approach?: Record<string, unknown> };
  const named = Object(approach).runway as unknown;
  if (typeof named !== "string") return value;
  const runway = look(named, [...path, "approach", "runway"]);
  return runway && { ...Object(value), approach: { ...approach, runway } };
}

function schemaFor(value: unknown, path: Path, placed: PlacedValues, issues: Issue[]) {
  const refuse = (code: string, facts: Record<string, string | null>) => {
    issues.push(errorAt(placed, path, code, facts));
    return null;
  };
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return refuse("brief-wrong-type", { expected: "map", found: foundType(value) });
  }
  const kind = KINDS.find((k) => Object.hasOwn(value, k));
  if (kind === undefined) {
    const keys = Object.keys(value);
    const didYouMean = keys.map((key) => nearMiss(key, KINDS)).find((k) => k !== null) ?? null;
    return refuse("brief-unknown-exercise", { keys: keys.join(", "), didYouMean, known: KINDS.join(", ") });
  }
  if (kind !== "course") return EXERCISE_SCHEMAS[kind];
  const to = Object.hasOwn(value, "to");
  const from = Object.hasOwn(value, "from");
  if (to && from) return refuse("brief-both-to-and-from", {});
  if (!to && !from) {
    const slip = Object.keys(value).find((key) => key !== "course" && nearMiss(key, ["to", "from"]) !== null);
    if (slip === undefined) return refuse("brief-missing-key", { key: "to", or: "from" });
    const where = placed.placeOfKey(path, slip);
    const facts = { key: slip, didYouMean: nearMiss(slip, ["to", "from"]), allowed: "to, from" };
    issues.push({ code: "brief-unknown-key", severity: "error", where, facts });
    return null;
  }
  return to ? EXERCISE_SCHEMAS.courseTo : EXERCISE_SCHEMAS.courseFrom;
}

/** The fix idents that can be seen in an exercise, with their paths. */
function identsIn(value: unknown): [Path, string][] {
  const map = Object(value) as Record<string, unknown>;
  const approach = Object(map.approach) as Record<string, unknown>;
  const seen: [Path, unknown][] = [
    ...["to", "from", "arc", "hold", "descent"].map((key): [Path, unknown] => [[key], map[key]]),
    ...APPROACH_IDENTS.map((key): [Path, unknown] => [["approach", key], approach[key]]),
    ...(Array.isArray(map.leg) ? map.leg.map((ident, i): [Path, unknown] => [["leg", i], ident]) : []),
  ];
  return seen.filter((entry): entry is [Path, string] => typeof entry[1] === "string" && entry[1] !== "");
}

/** The needle that the exercise is flown with: as written; else a VOR's at a VOR, and 1 NM elsewhere. */
const scaleOf = (written: NeedleScaleId | undefined, fix: Fix): NeedleScale =>
  NEEDLE_SCALES[written ?? (fix.kind === "vor" ? "vor" : "rnav-1")];

function drafted(
  written: WrittenExercise,
  base: Pick<DraftExercise, "between" | "altitude" | "where">,
  lookup: LookUp["fix"],
): DraftExercise | null {
  if ("course" in written) {
    const form = "to" in written ? "to" : "from";
    const fix = lookup("to" in written ? written.to : written.from, [form]);
    const course = readDirection(written.course);
    const title = `Course ${directionText(course)} ${form} ${fix?.ident}`;
    return fix && { ...base, kind: "course", form, fix, course, scale: scaleOf(written.scale, fix), title };
  }
  if ("hold" in written) {
    const fix = lookup(written.hold, ["hold"]);
    const inbound = readDirection(written.inbound);
    const turns = written.turns ?? "right"; // unless told otherwise: FAA AIM 5-3-8 j
    const leg = written.leg === undefined ? null : readHoldLeg(written.leg);
    const title = `Hold at ${fix?.ident}, inbound ${directionText(inbound)}, ${turns} turns`;
    return fix && { ...base, kind: "hold", fix, inbound, turns, leg, title };
  }
  if ("leg" in written) {
    const fromFix = lookup(written.leg[0], ["leg", 0]);
    const fix = lookup(written.leg[1], ["leg", 1]);
    const scale = NEEDLE_SCALES[written.scale ?? "rnav-1"];
    return fromFix && fix && { ...base, kind: "leg", fromFix, fix, scale, title: legTitle(fromFix, fix) };
  }
  if ("arc" in written) {
    const fix = lookup(written.arc, ["arc"]);
    const fromRadial = readDirection(written.from_radial);
    const toRadial = readDirection(written.to_radial);
    const radius = written.radius_nm;
    const turns = written.turns ?? null;
    const title = `Arc ${radius} NM around ${fix?.ident}, radials ${directionText(fromRadial)} to ${directionText(toRadial)}`;
    return fix && { ...base, kind: "arc", fix, radius, fromRadial, toRadial, turns, title };
  }
  if ("descent" in written) {
    const fix = lookup(written.descent, ["descent"]);
    const before = written.before_nm ?? 0;
    const title = `Descent to ${written.to_ft} ft, ${before ? `${before} NM before ` : "at "}${fix?.ident}`;
    return fix && { ...base, kind: "descent", fix, toAltitude: written.to_ft, before, title };
  }
  return draftApproach(written.approach, base, (ident, at) => lookup(ident, ["approach", ...at]));
}

export const legTitle = (from: Fix, to: Fix): string => `Leg ${from.ident} to ${to.ident}`;
