import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { debriefText } from "../../src/report/index.ts";
import { SAMPLES, sampleDebrief } from "../support/debriefed.ts";

const FOLDER = join(import.meta.dirname, "../golden");

describe("for review only, not truth: what a reader of each sample is told (UPDATE=1 rewrites)", () => {
  it.each(SAMPLES)("%s", async (name) => {
    const text = debriefText((await sampleDebrief(name)).document);
    const file = join(FOLDER, `${name}.txt`);
    if (process.env.UPDATE) writeFileSync(file, text);
    expect(existsSync(file)).toBe(true);
    expect(text).toBe(readFileSync(file, "utf8"));
  });
});
