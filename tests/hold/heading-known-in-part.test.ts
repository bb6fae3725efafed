/** The wind may become known in the very seconds in which the fix is reached: the heading there then has a doubt all the same. */
import { expect, it } from "vitest";
import { documentSchema } from "../../src/debrief/document.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { readLog } from "../../src/import/index.ts";
import { readBrief } from "../../src/index.ts";
import { gpxText } from "../../src/simulator/gpx.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { FIXES_YAML } from "../../src/simulator/orsa-vale.ts";

const BRIEF = `brief: 1
aircraft: { tas_kt: 105, tas_doubt_kt: 10 }
${FIXES_YAML}exercises:
  - { hold: TARNO, inbound: 247, turns: right, leg: 1 min }
`;

// an hour of training with the heading known for a part of those seconds, in the simulator's flights of these seeds
it.each([20, 31, 77])(
  "an hour of training, seed %i: its hold is told, and no doubt is not a number",
  async (seed) => {
    const base = scenarioNamed("hour-of-training");
    const time = base.start.time + seed * 86_400_000;
    const { track } = fly({ ...base, start: { ...base.start, time } }, seed);
    const log = await readLog([new TextEncoder().encode(gpxText(track, 5))], "hour.gpx");
    const { document } = debriefFlight({ log, brief: readBrief(BRIEF, "brief.yaml") });
    expect(documentSchema.safeParse(document).error?.issues ?? []).toEqual([]);
    const [hold] = document.exercises;
    expect(hold?.kind === "hold" && hold.facts?.entry?.heading95Deg).toBeGreaterThan(0);
  },
);
