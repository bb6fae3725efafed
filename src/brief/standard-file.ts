/** A school's own standard, from the file that it writes to the limits that exercises are held against. */
import { z } from "zod";
import { type Issue, UnusableInput } from "../quantity/issue.ts";
import type { Limit, TestStandard } from "../standard/test-standard.ts";
import { validated } from "./problems.ts";
import { readText } from "./text.ts";

const needle = z.number().positive().max(2).describe("at most, of full scale").optional();
const altitude = z.number().positive().max(2000).describe("feet to each side").optional();

const minimum = z.number().nonnegative().max(2000).describe("feet above or below the minimum").optional();

/** Version 1. A limit that is left out is not judged. */
const writtenStandardSchema = z
  .strictObject({
    standard: z.literal(1).describe("version of this format"),
    id: z.string().min(1).describe("the name by which a brief calls it"),
    title: z.string().min(1).describe("as it is printed on the sheet"),
    citation: z.string().min(1).describe("where it is written"),
    course: z.strictObject({ needle, altitude_ft: altitude }).optional(),
    hold: z
      .strictObject({
        needle,
        altitude_ft: altitude,
        entry_deg: z.number().nonnegative().max(30).describe("outside the sector of the entry").optional(),
        leg_s: z.number().positive().max(120).describe("seconds to each side of the leg's time").optional(),
        leg_nm: z.number().positive().max(5).describe("NM to each side of the leg's length").optional(),
        holding: z
          .enum(["us", "icao"])
          .describe("whose published holding times and speeds count; without it neither is judged")
          .optional(),
        speed: z.boolean().describe("whether the published holding speeds are judged").optional(),
      })
      .optional(),
    arc: z
      .strictObject({
        distance_nm: z.number().positive().max(20).describe("NM to each side of the arc").optional(),
        altitude_ft: altitude,
      })
      .optional(),
    descent: z.strictObject({ altitude_ft: altitude }).optional(),
    approach: z
      .strictObject({
        needle,
        glide_path: needle,
        final_fix_ft: altitude,
        minimum_above_ft: minimum,
        minimum_below_ft: minimum,
        decision_above_ft: minimum,
        decision_below_ft: minimum,
        step_down_below_ft: minimum,
        missed_track_deg: z
          .number()
          .positive()
          .max(45)
          .describe("to each side of the missed approach's course")
          .optional(),
        gate_needle: needle,
        gate_sink_fpm: z.number().positive().max(5000).describe("feet a minute, at the gates").optional(),
      })
      .optional(),
    $schema: z.string().optional().describe("for editors; not looked at"),
  })
  .meta({
    title: "A school's own standard",
    description: "The limits that exercises are held against.",
  });

/**
 * Reads a school's standard from YAML or JSON.
 * @throws UnusableInput with every problem found: half a standard would judge by limits that nobody set.
 */
export function readStandard(text: string, file: string): TestStandard {
  const placed = readText(text, file);
  const issues: Issue[] = [];
  const written = validated(writtenStandardSchema, placed.values, [], placed, issues);
  if (!written) throw new UnusableInput(issues);
  const { id, title, citation, course, hold, arc, descent, approach } = written;
  const limit = <T extends number>(value: T | undefined): Limit<T> | null =>
    value === undefined ? null : { limit: value, edge: "within", citation };
  return {
    id,
    title,
    citation,
    course: { needle: limit(course?.needle), briefly: null, altitude: limit(course?.altitude_ft) },
    hold: {
      needle: limit(hold?.needle),
      altitude: limit(hold?.altitude_ft),
      entry: limit(hold?.entry_deg),
      legTime: limit(hold?.leg_s),
      legDistance: limit(hold?.leg_nm),
      rules: hold?.holding ?? null,
      speed: hold?.speed ?? false,
    },
    arc: { distance: limit(arc?.distance_nm), altitude: limit(arc?.altitude_ft) },
    descent: { altitude: limit(descent?.altitude_ft) },
    approach: {
      needle: limit(approach?.needle),
      briefly: null,
      glidePath: limit(approach?.glide_path),
      barometricPath: null,
      fixAltitude: limit(approach?.final_fix_ft),
      minimumDescent: {
        above: limit(approach?.minimum_above_ft),
        below: limit(approach?.minimum_below_ft),
      },
      decision: {
        above: limit(approach?.decision_above_ft),
        below: limit(approach?.decision_below_ft),
      },
      stepDown: limit(approach?.step_down_below_ft),
      missedTrack: limit(approach?.missed_track_deg),
      gates: { needle: limit(approach?.gate_needle), sink: limit(approach?.gate_sink_fpm) },
    },
  };
}
