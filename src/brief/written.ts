/** A brief as it is written, key by key: the schema that validates it and that editors are given. */
import { z } from "zod";
import { NEEDLE_SCALES, type NeedleScaleId } from "../standard/needle.ts";
import { DECLINATION_PATTERN, DIRECTION_PATTERN } from "./direction.ts";
import { HOLD_LEG_PATTERN } from "./hold-leg.ts";

/** `09:44` or `09:44:30`, perhaps with a Z. */
export const CLOCK_PATTERN = /^\s*([01]?[0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9])?\s*[Zz]?\s*$/;

const SCALE_IDS = Object.keys(NEEDLE_SCALES) as NeedleScaleId[];
const LINEAR_IDS = Object.values(NEEDLE_SCALES)
  .filter((scale) => scale.kind === "linear")
  .map((scale) => scale.id);

const ident = z.string().min(1);
const latitude = z.number().min(-90).max(90).describe("WGS84, degrees, north positive");
const longitude = z.number().min(-180).max(180).describe("WGS84, degrees, east positive");
const altitude = z.number().min(-2000).max(60_000).describe("feet above mean sea level");
/** A height to fly at; 4.500, which YAML reads as four and a half, is not one. */
const flown = altitude.refine((feet) => Number.isInteger(feet) || Math.abs(feet) >= 100, {
  error: "whole feet, as in 4500",
});
const direction = z
  .union([z.number().min(0).max(360), z.string().regex(DIRECTION_PATTERN)])
  .describe("degrees, magnetic unless written with a T, as in 218T");
const declination = z.number().min(-180).max(180);
const clock = z.string().regex(CLOCK_PATTERN);
const scale = z.enum(SCALE_IDS).describe("what full scale of the needle means");

const anyExercise = {
  altitude_ft: flown.optional(),
  between: z.tuple([clock, clock]).optional().describe("UTC, from and to; may run over midnight"),
};

const courseTo = z.strictObject({ course: direction, to: ident, scale: scale.optional(), ...anyExercise });
const courseFrom = z.strictObject({
  course: direction,
  from: ident,
  scale: scale.optional(),
  ...anyExercise,
});
const leg = z.strictObject({
  leg: z.tuple([ident, ident]).describe("from the first fix to the second"),
  scale: z.enum(LINEAR_IDS).optional().describe("a leg between two fixes has a linear scale"),
  ...anyExercise,
});
const arc = z.strictObject({
  arc: ident.describe("the station"),
  radius_nm: z.number().positive().max(60),
  from_radial: direction,
  to_radial: direction,
  turns: z.enum(["right", "left"]).optional().describe("right = clockwise; without it, the shorter way"),
  ...anyExercise,
});
const hold = z.strictObject({
  hold: ident.describe("the fix"),
  inbound: direction,
  turns: z.enum(["right", "left"]).optional(),
  leg: z.string().regex(HOLD_LEG_PATTERN).optional().describe("1 min, 90 s or 4 NM"),
  ...anyExercise,
});
const descent = z.strictObject({
  descent: ident.describe("the fix"),
  to_ft: flown,
  before_nm: z.number().min(0).max(60).optional(),
  ...anyExercise,
});
const runway = z.strictObject({
  ident: z.string().min(1).optional().describe("as in 22"),
  threshold: z.tuple([latitude, longitude]),
  end: z.tuple([latitude, longitude]).describe("the far end"),
  elevation_ft: altitude.describe("of the threshold"),
  length_assumed: z
    .literal(true)
    .optional()
    .describe("the far end tells the direction alone: the length is not known"),
});
const approach = z.strictObject({
  approach: z.strictObject({
    runway,
    guidance: z.enum(["localizer", "vor", "lnav", "lpv", "lnav-vnav", "rnp", "centre-line"]),
    width_deg: z.number().positive().max(12).optional().describe("localizer: whole width, both sides"),
    antenna_ft: z.number().positive().max(30_000).optional().describe("localizer: antenna to threshold"),
    rnp_nm: z.number().positive().max(10).optional().describe("RNP: full scale, each side"),
    station: ident.optional().describe("VOR: the station, unless the final fix is one"),
    course: direction.optional().describe("the final course, unless it lies along the runway"),
    final_fix: ident.optional(),
    final_fix_ft: flown.optional().describe("altitude over the final fix"),
    glide_path_deg: z.number().positive().max(10).optional(),
    threshold_crossing_ft: z.number().min(0).max(200).optional().describe("path above the threshold"),
    decision_ft: flown.optional(),
    minimum_ft: flown.optional().describe("minimum descent altitude"),
    step_downs: z
      .array(
        z.strictObject({
          fix: ident.optional(),
          before_nm: z.number().min(0).max(30).optional().describe("before the threshold"),
          not_below_ft: flown,
        }),
      )
      .optional()
      .describe("not below an altitude until past a fix, or a distance before the threshold"),
    missed_point_nm: z.number().min(0).max(15).optional().describe("before the threshold"),
    missed_to: ident.optional(),
    missed_course: direction.optional().describe("of the climb after a missed approach"),
  }),
  ...anyExercise,
});

/** Each way to write an exercise. The two courses differ in their second key. */
export const EXERCISE_SCHEMAS = { courseTo, courseFrom, leg, arc, hold, descent, approach };

export const fixSchema = z.strictObject({
  lat: latitude,
  lon: longitude,
  kind: z.enum(["vor", "ndb", "dme", "waypoint", "runway", "other"]).optional(),
  declination: declination.optional().describe("the station's own, degrees, east positive"),
  elevation_ft: altitude.optional(),
});

export const aircraftSchema = z.strictObject({
  tas_kt: z.number().positive().max(1000),
  tas_doubt_kt: z.number().positive().max(200).optional().describe("one standard deviation"),
  category: z.enum(["A", "B", "C", "D", "E"]).optional(),
});

export const windSchema = z.strictObject({
  altitude_ft: altitude.optional(),
  from_true: z.number().min(0).max(360).describe("where the wind comes from, degrees true"),
  kt: z.number().min(0).max(300),
  doubt_kt: z.number().positive().max(100).optional().describe("one standard deviation of each component"),
  source: z.string().optional().describe("your word for it, as in forecast"),
});

/** The frame of a brief: its lists are validated entry by entry, so that one bad entry spoils only itself. */
export const frameSchema = z.strictObject({
  brief: z.literal(1).describe("version of this format"),
  title: z.string().optional(),
  aircraft: z.unknown().optional(),
  standard: z.string().min(1).optional(),
  wind: z.array(z.unknown()).optional(),
  fixes: z.record(z.string(), z.unknown()).optional(),
  exercises: z.array(z.unknown()),
  $schema: z.string().optional().describe("for editors; not looked at"),
});

/** With a point list beside the brief a runway may be named only, and a fix need not say where it is. */
const namedApproach = approach.extend({
  approach: approach.shape.approach.extend({
    runway: z.union([runway, ident.describe("of a point list")]),
  }),
});
const namedFix = fixSchema.extend({
  lat: latitude.optional(),
  lon: longitude.optional(),
  declination: z
    .union([declination, z.string().regex(DECLINATION_PATTERN)])
    .optional()
    .describe("the station's own, degrees, east positive, or with its side, as in 2.5E"),
});

/** The whole, for the JSON Schema. */
export const writtenBriefSchema = frameSchema
  .extend({
    aircraft: aircraftSchema.optional(),
    wind: z.array(windSchema).optional(),
    fixes: z.record(ident, namedFix).optional(),
    exercises: z
      .array(
        z.union(
          Object.values({ ...EXERCISE_SCHEMAS, approach: namedApproach }) as unknown as [typeof courseTo],
        ),
      )
      .min(1),
  })
  .meta({ title: "Brief of a training flight", description: "What the flight was meant to do." });

export type WrittenCourse = z.infer<typeof courseTo> | z.infer<typeof courseFrom>;
export type WrittenLeg = z.infer<typeof leg>;
export type WrittenArc = z.infer<typeof arc>;
export type WrittenHold = z.infer<typeof hold>;
export type WrittenDescent = z.infer<typeof descent>;
export type WrittenApproach = z.infer<typeof approach>;
export type WrittenExercise =
  | WrittenCourse
  | WrittenLeg
  | WrittenArc
  | WrittenHold
  | WrittenDescent
  | WrittenApproach;
