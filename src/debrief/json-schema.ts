/** The JSON Schema (2020-12) of a debrief, for other programs: shipped as a file beside this one, made from the document's own schema. */
import { z } from "zod";
import shipped from "./debrief.schema.json" with { type: "json" };
import { documentSchema } from "./document.ts";

/** As shipped in `debrief.schema.json`. A test fails when it differs from `makeDebriefJsonSchema()`. */
export const debriefJsonSchema: Readonly<Record<string, unknown>> = shipped;

/** Makes the schema anew from the document's. `UPDATE=1` with the test of this file writes it. */
export function makeDebriefJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(documentSchema, { target: "draft-2020-12", io: "output" });
}
