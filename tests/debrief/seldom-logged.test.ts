/** Logs with a point each 20 s to two minutes: every exercise is told as far as they go, and nothing is made of what they miss. */
import { describe, expect, it } from "vitest";
import { documentSchema } from "../../src/debrief/document.ts";
import { debriefText } from "../../src/report/index.ts";
import { flyScenario } from "../../src/simulator/index.ts";
import { debriefOf } from "../support/debriefed.ts";

const FLIGHTS = [
  "arc-tidy",
  "arc-to-a-radial",
  "descent-begun-late",
  "approach-tidy-precision",
  "approach-below-minimum",
  "hold-direct-well-flown",
];

describe.each(FLIGHTS)("%s", (name) => {
  it.each([20, 30, 45, 60, 90, 120])(
    "a point each %i s: a whole document, whole sentences",
    async (every) => {
      for (const seed of [5000, 5001]) {
        const { gpx, brief } = flyScenario(name, seed, { logging: { every } });
        const { document } = await debriefOf(gpx, brief);
        documentSchema.parse(JSON.parse(JSON.stringify(document)));
        expect(debriefText(document)).not.toMatch(/NaN|undefined|null/);
      }
    },
  );
});

it("a gate between two points a minute apart has no rate, no bank and no steadiness, and its rate is not judged", async () => {
  const { gpx, brief } = flyScenario("approach-tidy-precision", 5000, { logging: { every: 60 } });
  const [approach] = (await debriefOf(gpx, brief)).document.exercises;
  if (approach?.kind !== "approach" || !approach.facts) throw new Error("no approach");
  const silent = approach.facts.gates.filter((gate) => gate.utc && gate.verticalFpm === null);
  expect(silent.length).toBeGreaterThan(0);
  for (const { heightFt, bankDeg, trackUnsteadyDeg } of silent) {
    expect([bankDeg, trackUnsteadyDeg]).toEqual([null, null]);
    const verdict = approach.verdicts.find((v) => v.criterion === `approach-gate-${heightFt}-sink`);
    expect(verdict).toMatchObject({ verdict: "cannot tell", reason: "log-silent" });
  }
});
