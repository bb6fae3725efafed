import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { briefJsonSchema, makeBriefJsonSchema } from "../../src/brief/json-schema.ts";

const FILE = join(import.meta.dirname, "../../src/brief/brief.schema.json");
const fresh = `${JSON.stringify(makeBriefJsonSchema(), null, 2)}\n`;
if (process.env.UPDATE) writeFileSync(FILE, fresh);

it("the shipped file is not stale (UPDATE=1 writes it)", () => {
  expect(readFileSync(FILE, "utf8")).toBe(fresh);
});

it("the export is the shipped file", () => {
  expect(briefJsonSchema).toEqual(JSON.parse(readFileSync(FILE, "utf8")));
});
