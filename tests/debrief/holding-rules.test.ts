/** A school's standard says whose holding rules count: what is measured of a hold follows it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { readStandard } from "../../src/brief/index.ts";
import { debriefOf } from "../support/debriefed.ts";

const sample = (file: string) =>
  readFileSync(join(import.meta.dirname, "../../samples/hold-direct-well-flown", file), "utf8");

it("FAA AIM 5-3-8 j.4 times the inbound leg, PANS-OPS the outbound one", async () => {
  for (const [holding, citation] of [
    ["us", "FAA AIM"],
    ["icao", "PANS-OPS"],
  ] as const) {
    const text = `standard: 1\nid: a\ntitle: A\ncitation: A 1\nhold: { leg_s: 10, speed: true, holding: ${holding} }\n`;
    const standard = readStandard(text, "school.yaml");
    const { document } = await debriefOf(sample("log.gpx"), sample("brief.yaml"), { standard });
    const hold = document.exercises.find((e) => e.kind === "hold")!;
    expect(hold.facts).toMatchObject({ timing: holding });
    const speed = hold.verdicts.find(({ criterion }) => criterion === "hold-speed")!;
    expect(speed.citation).toContain(citation);
  }
});
