/** The next hold in words. */
import { describe, expect, it } from "vitest";
import { racetrackFor, readHold, type TypedHold } from "../../src/hold/index.ts";
import { CAUTION } from "../../src/quantity/caution.ts";
import { racetrackText } from "../../src/report/index.ts";

function said(more: TypedHold = {}): string {
  const { asked } = readHold({ inbound: "247", tas: "100", wind: "157/20", ...more });
  if (!asked) throw new Error("not read");
  return racetrackText(racetrackFor(asked)).replace(/\s+/g, " ");
}

describe("the next hold as text", () => {
  it("says the law, the reference of every direction, the rules and the caution", () => {
    const text = said();
    // 2.85 times, 70 s: the worked table of the law for 20 kt square to the course
    expect(text).toContain(
      "This wind asks for 2.8 times the inbound correction outbound, 70 s from wings level.",
    );
    expect(text).toContain(
      "Inbound course 247°M, right turns, true airspeed 100 kt; wind from 157°M at 20 kt",
    );
    expect(text).toContain("Directions are magnetic, the wind’s too.");
    for (const [angle] of text.matchAll(/\b\d{3}°.?/g)) expect(angle).toMatch(/°M$/);
    expect(text).toContain("Once the inbound correction for 60 s");
    expect(text).toContain("Three times the inbound correction for 60 s");
    expect(text).toContain(CAUTION);
    expect(text).not.toMatch(/undefined|NaN|null/);
  });

  it("says which directions are by the station and which by the compass, where they differ", () => {
    const text = said({ declination: "0", variation: "2.3E" });
    expect(text).toContain(
      "the course is by the station’s declination, headings and the wind are by the compass, which reads 2.3° less than it.",
    );
    expect(text).toContain("Inbound course 247°M");
    // in still air back along the course: 067 by the station, true with 0, and 064.7 with 2.3 east
    expect(text).toContain("In still air: heading 065°M");
  });

  it("carries the doubt of the wind into the answer", () => {
    expect(said({ windDoubt: "5" })).toMatch(
      /asks for 2\.8 times \(± \d\.\d\) .* outbound, 70 s \(± \d+ s\)/,
    );
  });

  it("says plainly where nothing closes, and what calm asks for", () => {
    expect(said({ wind: "247/60" })).toContain(
      // by hand: 120 s of turning at 60 kt, flown back at 40 kt
      "No solution with this leg: the wind carries the turns alone so far out that the inbound leg takes 180 s without any outbound leg.",
    );
    expect(said({ wind: "247/60" })).toContain("Without a correction for 60 s");
    expect(said({ wind: "calm" })).toContain("In still air: no correction, 60 s outbound from wings level.");
    expect(said({ wind: "157/120" })).toContain(
      "No solution: a wind of 120 kt is no weaker than the true airspeed, 100 kt.",
    );
    // by hand: (180 kt x 60 s inbound + 80 kt x 120 s of turning) / 20 kt outbound make 1020 s;
    // a turn of 60 s ends 80 kt x 60 s past the fix, so that abeam it comes 240 s after
    expect(said({ wind: "67/80" })).toContain(
      "none outbound, 780 s from abeam the fix. That is outside 15 to 180 s, and hardly flyable as it stands.",
    );
  });

  it("says true where it is true, and flags what nobody flies", () => {
    const text = said({ inbound: "247T", wind: "167T/40" });
    expect(text).toContain("Directions are true");
    for (const [angle] of text.matchAll(/\b\d{3}°.?/g)) expect(angle).toMatch(/°T$/);
    expect(text).toContain("over 45°");
  });
});
