/** A school's standard says whose holding rules count: what is measured of a hold follows it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { readStandard } from "../../src/brief/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { findingSentence, lapSentences } from "../../src/report/index.ts";
import { debriefOf, holds } from "../support/debriefed.ts";

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

// ICAO Doc 8168 vol. I, as quoted in national publications: outbound timing begins abeam the fix or on attaining the outbound heading, whichever comes later
it.each(["hold-direct-well-flown", "hold-outbound-flown-parallel", "hold-teardrop-left-turns"])(
  "%s by ICAO timing: one time of each outbound leg, in its line, what is said of it and its verdict",
  async (name) => {
    const of = (file: string) => readFileSync(join(import.meta.dirname, "../../samples", name, file), "utf8");
    const { document } = await debriefOf(of("log.gpx"), of("brief.yaml"), {
      standard: standardNamed("instrument-rating-eu"),
    });
    const [hold] = holds(document);
    const lines = lapSentences(hold!);
    for (const [i, lap] of hold!.facts.laps.entries()) {
      const { seconds, fromAbeamS, betweenTurnsS, begins } = lap.outbound;
      expect(seconds).toBeCloseTo(Math.min(betweenTurnsS, fromAbeamS ?? betweenTurnsS), 1);
      expect(lap.legOff!.leg).toBe("outbound");
      expect(lap.legOff!.seconds).toBeCloseTo(seconds - 60, 1);
      const clock = begins === "abeam" ? "from abeam the fix" : "from wings level";
      expect(lines[i]).toContain(`outbound ${Math.round(seconds)} s ${clock}`);
      const said = hold!.findings.find((f) => f.code === "leg-time-off" && f.facts.lap === i + 1);
      if (said)
        expect(findingSentence(said, hold!)).toBe(
          `Lap ${i + 1}: the outbound leg took ${Math.round(seconds)} seconds ${clock}, not 60.`,
        );
    }
    const worst = Math.max(...hold!.facts.laps.map(({ outbound }) => Math.abs(outbound.seconds - 60)));
    const time = hold!.verdicts.find(({ criterion }) => criterion === "hold-leg-time")!;
    expect(time.value).toBeCloseTo(worst, 1);
  },
);
