import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import formats from "ajv-formats";
import { describe, expect, it } from "vitest";
import { debriefJsonSchema, makeDebriefJsonSchema } from "../../src/debrief/json-schema.ts";
import { SAMPLES, sampleDebrief } from "../support/debriefed.ts";

const FILE = join(import.meta.dirname, "../../src/debrief/debrief.schema.json");
const fresh = `${JSON.stringify(makeDebriefJsonSchema(), null, 2)}\n`;
if (process.env.UPDATE) writeFileSync(FILE, fresh);

it("the shipped file is not stale (UPDATE=1 writes it)", () => {
  expect(readFileSync(FILE, "utf8")).toBe(fresh);
});

it.skipIf(process.env.UPDATE)("the export is the shipped file", () => {
  expect(debriefJsonSchema).toEqual(JSON.parse(readFileSync(FILE, "utf8")));
});

describe("JSON Schema draft 2020-12, checked by ajv", () => {
  const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true });
  formats.default(ajv);
  const valid = ajv.compile(JSON.parse(fresh));

  it.each(SAMPLES)("%s validates, as written to a file", async (name) => {
    const { document } = await sampleDebrief(name);
    valid(JSON.parse(JSON.stringify(document)));
    expect(valid.errors).toBeNull();
  });

  it("refuses a document with a key too many, a missing caution, a local time", async () => {
    const { document } = await sampleDebrief("calm-and-tidy");
    expect(valid({ ...document, extra: 1 })).toBe(false);
    expect(valid({ ...document, caution: "" })).toBe(false);
    expect(valid({ ...document, log: { ...document.log, startUtc: "17.10.2026 01:12" } })).toBe(false);
  });
});
