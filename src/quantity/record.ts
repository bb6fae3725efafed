/** The small records that every JSON contract of ours is made of, as schemas. */
import { z } from "zod";

/** ISO 8601, UTC, as in 2026-10-17T09:44:10Z. */
export const utcSchema = z.iso.datetime();
const factSchema = z.union([z.string(), z.number(), z.boolean(), z.null()]);
const whereSchema = z.strictObject({
  file: z.string().optional(),
  line: z.number().optional(),
  column: z.number().optional(),
  point: z.number().optional(),
  path: z.string().optional(),
});

export const issueSchema = z.strictObject({
  code: z.string(),
  severity: z.enum(["error", "warning", "note"]),
  where: whereSchema,
  facts: z.record(z.string(), factSchema),
});

/** The most that the size of a deviation may have come to between two points, and the seconds between them (null without times); null or missing where no more than was seen. */
export const unseenSchema = z
  .strictObject({ most: z.number(), seconds: z.number().nullable() })
  .nullable()
  .optional();

/** What a finding rests on: a time (null where the log has none) and the values. */
export const findingSchema = z.strictObject({
  code: z.string(),
  facts: z.record(z.string(), factSchema),
  evidence: z.strictObject({ fromUtc: utcSchema.nullable(), toUtc: utcSchema.nullable() }),
});

export type Finding = z.infer<typeof findingSchema>;
