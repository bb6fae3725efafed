/** The table of the laps says what the document says, with units and sides. */
import { describe, expect, it } from "vitest";
import type { HoldFacts } from "../../src/index.ts";
import { holdFactRows } from "../../web/hold-fact-rows.ts";
import { lapRows } from "../../web/lap-rows.ts";
import { inventHold, THREE_LAPS } from "./drawings/invented-hold.ts";

const facts = inventHold(THREE_LAPS).exercise.facts!;
const withLaps = (change: (lap: HoldFacts["laps"][number]) => object): HoldFacts =>
  ({ ...facts, laps: facts.laps.map((lap) => ({ ...lap, ...change(lap) })) }) as HoldFacts;

describe("laps as rows", () => {
  it("flown: seconds, degrees with L or R, times with ×, doubt where it is not under the last figure", () => {
    const [first] = lapRows(facts);
    expect(first!.flown).toMatchObject({
      outboundTime: "62 s",
      outboundCorrection: "11° R ± 1°",
      factor: "×1.1 ± 0.2",
      height: "2,980 ft",
      wind: "192°T 20 kt",
    });
    expect(first!.flown.rollOut).toMatch(/^0\.\d\d NM R ± 0\.02$/);
    expect(first!.flown.inboundCorrection).toMatch(/^10° L ± 1°$/);
  });

  it("asked: what the racetrack solved for the lap’s wind has", () => {
    const { solved } = facts.laps[0]!;
    if (!solved || "none" in solved) return expect.fail("not solved");
    const [first] = lapRows(facts);
    expect(first!.asked.inboundTime).toBe("60 s"); // US timing, 1 min
    expect(first!.asked.factor).toContain(`×${solved.factor!.toFixed(1)}`);
    expect(first!.asked.outboundCorrection).toContain(`${Math.round(solved.outboundCorrectionDeg)}° R`);
    expect(first!.asked.height).toBe("3,000 ft");
  });

  it("says what is not known, not flown, and where nothing closes", () => {
    const blind = withLaps(() => ({
      solved: null,
      doubt: null,
      wind: null,
      factorOfNeed: null,
      inbound: null,
    }));
    expect(lapRows(blind)[0]!.asked.factor).toBe("not known");
    expect(lapRows(blind)[0]!.flown).toMatchObject({ factor: "not known", inboundTime: "not flown" });
    const strong = withLaps(() => ({ solved: { none: "does-not-close" }, doubt: null }));
    expect(lapRows(strong)[0]!.asked.outboundTime).toBe("no solution");
    for (const given of [facts, blind, strong])
      expect(JSON.stringify(lapRows(given))).not.toMatch(/NaN|undefined|null/);
  });
});

describe("facts of a hold as rows", () => {
  it("has the entry, the speed against its limit, the side not to be on, each with what it is of", () => {
    const rows = Object.fromEntries(
      holdFactRows(facts).map(({ fact, value, note }) => [fact, [value, note]]),
    );
    expect(rows.Entry).toEqual(["direct", expect.stringContaining("heading 256°M at the fix")]);
    expect(rows["Airspeed, indicated, estimated"]![1]).toContain("at most 200 kt");
    expect(rows["On the non-holding side"]).toEqual([
      "42 s, 0.12 NM",
      expect.stringContaining("not the procedure’s protected airspace"),
    ]);
    expect(JSON.stringify(rows)).not.toMatch(/NaN|undefined|null/);
  });

  it("tells what cannot be told, and a hold that was found from one that was published", () => {
    const found: HoldFacts = {
      ...facts,
      fix: { ...facts.fix, ident: null, doubt95Nm: 0.06 },
      inbound95Deg: 1.2,
      sure: false,
      maybeCircuit: true,
      entry: null,
      speed: null,
      cannotTell: [{ fact: "factor", reason: "wind-not-known" }],
    };
    const rows = holdFactRows(found);
    expect(rows[0]!.note).toContain("maybe a circuit");
    expect(rows.at(-1)).toMatchObject({
      fact: "Factor",
      value: "cannot tell",
      note: "the wind is not known here",
    });
  });
});
