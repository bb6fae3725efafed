/** Logs without a GPS height: the pressure altitude in its place is not on the altimeter's setting, and no verdict is built on it. */
import { describe, expect, it } from "vitest";
import { measureApproach } from "../../src/approach/index.ts";
import { readBrief } from "../../src/brief/index.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { gradeApproach } from "../../src/grade/index.ts";
import { readLog } from "../../src/import/index.ts";
import { debriefText } from "../../src/report/index.ts";
import { TEST_STANDARDS } from "../../src/standard/tolerance.ts";
import { smoothTrack } from "../../src/track/index.ts";
import { approachTo, beam, FIELD, straightIn, trackOf } from "../support/flown-approach.ts";

const us = TEST_STANDARDS.find(({ id }) => id === "instrument-rating-us")!;
/** 998 hPa instead of 1013: 15 hPa of 30 ft (common practice: 27 to 30 ft to a hectopascal near sea level). */
const LOW_DAY_FT = 450;

/** An IGC log of rows (latitude, longitude, feet), a second apart from 010000 UTC; heights by pressure alone, FAI IGC A4.1. */
function igc(rows: readonly { latitude: number; longitude: number; feet: number }[]): string {
  const two = (n: number) => String(n).padStart(2, "0");
  const angle = (value: number, wide: number) => {
    const minutes = Math.round(Math.abs(value) * 60_000);
    return `${String(Math.floor(minutes / 60_000)).padStart(wide, "0")}${String(minutes % 60_000).padStart(5, "0")}`;
  };
  const lines = rows.map(({ latitude, longitude, feet }, t) => {
    const time = `01${two(Math.floor(t / 60))}${two(t % 60)}`;
    const metres = String(Math.round(feet * 0.3048)).padStart(5, "0");
    return `B${time}${angle(latitude, 2)}N${angle(longitude, 3)}EA${metres}00000`;
  });
  return ["AXXXABC", "HFDTE171026", ...lines].join("\r\n");
}

describe("a descent and a level leg on a day of 998 hPa, by pressure alone", async () => {
  // level at 3,000 ft to 6 NM before the fix, then 500 ft/min at 120 kt to 2,000 ft, over it at 2,000 by the altimeter
  const rows = Array.from({ length: 700 }, (_, t) => {
    const toFix = 15 - t / 30;
    const down = Math.max(0, 6 - toFix) * 250;
    return {
      latitude: 35.6,
      longitude: 172.3 - (toFix / 60) * 1.2299,
      feet: Math.max(2000, 3000 - down) + LOW_DAY_FT,
    };
  });
  const brief = `brief: 1
title: Descent
standard: instrument-rating-us
fixes:
  BELVO: { lat: 35.6, lon: 172.3 }
exercises:
  - { descent: BELVO, to_ft: 2000 }
  - { course: 90T, to: BELVO, altitude_ft: 3000 }
`;
  const log = await readLog([new TextEncoder().encode(igc(rows))], "log.igc");
  const { document } = debriefFlight({ log, brief: readBrief(brief, "brief.yaml") });

  it("is known to be by pressure", () => expect(log.track.heightsBy).toBe("pressure"));
  it("gives no verdict against the altimeter, and the reason", () => {
    const verdicts = document.exercises.flatMap((e) => e.verdicts);
    const against = verdicts.filter(({ criterion }) => /descent-height|height-briefed/.test(criterion));
    expect(against.map(({ criterion, verdict, reason }) => [criterion, verdict, reason])).toEqual([
      ["descent-height", "cannot tell", "height-is-pressure"],
      ["course-height-briefed", "cannot tell", "height-is-pressure"],
    ]);
  });
  it("says so in every exercise, and nowhere that a height is by GPS", () => {
    for (const { facts } of document.exercises)
      expect(facts!.cannotTell.map(({ reason }) => reason)).toContain("height-is-pressure");
    const descent = document.exercises.find(({ kind }) => kind === "descent")!;
    const crossed = descent.findings.find(({ code }) => code === "descent-crossed-high")!;
    expect(crossed.facts).toMatchObject({ sure: false, by: "pressure" });
    const text = debriefText(document);
    expect(text).toContain("1013.25 hPa");
    expect(text).not.toContain("by GPS");
  });
});

describe("an approach that no roll on its field ties", () => {
  const exercise = approachTo(FIELD);
  const rows = (roll: boolean) =>
    straightIn(
      9,
      () => 0,
      (b) => Math.min(1650, beam(b)),
      { roll, to: roll ? -0.15 : 1 },
    );
  const measure = (roll: boolean) => {
    const motion = smoothTrack(trackOf(exercise, rows(roll), LOW_DAY_FT))!;
    const path = { ...motion, heightsBy: "pressure" as const };
    return measureApproach({ exercise, path, span: { start: 0, end: motion.length }, motion, wind: null });
  };
  it("flown on the beam 450 ft off by the setting, is not held to be off it", () => {
    const { facts } = measure(false);
    expect(facts.cannotTell).toContainEqual({ fact: "height", reason: "height-is-pressure" });
    expect(facts.height!.doubt95Ft).toBeGreaterThanOrEqual(600);
    const verdicts = gradeApproach(facts, us);
    expect(
      verdicts.filter(
        ({ criterion, verdict }) => /glide|fix-height/.test(criterion) && verdict === "not met",
      ),
    ).toEqual([]);
    expect(
      verdicts.find(({ criterion }) => criterion === "approach-fix-height")?.reason ?? "height-is-pressure",
    ).toBe("height-is-pressure");
  });
  it("is told as well as any other once it rolled on the runway", () => {
    const { facts } = measure(true);
    expect(facts.height).toMatchObject({ anchored: "runway" });
    expect(facts.cannotTell.map(({ reason }) => reason)).not.toContain("height-is-pressure");
  });
});
