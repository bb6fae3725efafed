/** The JSON Schema (2020-12) of a brief, for editors: shipped as a file beside this one, made from the reader's own schema. */
import { z } from "zod";
import shipped from "./brief.schema.json" with { type: "json" };
import { writtenBriefSchema } from "./written.ts";

/** As shipped in `brief.schema.json`. A test fails when it differs from `makeBriefJsonSchema()`. */
export const briefJsonSchema: Readonly<Record<string, unknown>> = shipped;

/** Makes the schema anew from the reader's. `UPDATE=1` with the test of this file writes it. */
export function makeBriefJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(writtenBriefSchema, { target: "draft-2020-12", io: "input" });
}
