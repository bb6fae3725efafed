import { describe, expect, it } from "vitest";
import { documentSchema } from "../src/debrief/document.ts";
import { debriefText } from "../src/report/index.ts";
import {
  APPROACH_SAMPLES,
  ARC_SAMPLES,
  approaches,
  COURSE_SAMPLES,
  courses,
  DESCENT_SAMPLES,
  HOLD_SAMPLES,
  holds,
  SAMPLES,
  sampleDebrief,
  sampleTruth,
} from "./support/debriefed.ts";
import { near, nearDirection } from "./support/near.ts";

const seconds = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / 1000;
const RADIANS = Math.PI / 180;

describe.each(SAMPLES)("%s against the simulator's own truth", (name) => {
  it("is a valid document, with the caution in it and in the text", async () => {
    const { document } = await sampleDebrief(name);
    documentSchema.parse(JSON.parse(JSON.stringify(document)));
    expect(debriefText(document).replace(/\s+/g, " ")).toContain(document.caution);
  });
});

describe.each(COURSE_SAMPLES)("the courses of %s against the simulator's own truth", (name) => {
  it("finds each exercise when it was flown: the end within 20 s, the start at most 5 s after established and within 90 s of the turn to it", async () => {
    const { document } = await sampleDebrief(name);
    const { exercises } = sampleTruth(name).truth;
    expect(document.exercises.map((e) => e.title)).toEqual(exercises.map((e) => e.title));
    document.exercises.forEach((e, i) => {
      const t = exercises[i]!;
      near(seconds(t.endUtc, e.endUtc!), 0, 20, "s", `${e.title}, end`);
      // the intercept belongs to the exercise, so it begins before the truth's course is established
      expect(seconds(t.establishedUtc!, e.startUtc!)).toBeLessThanOrEqual(5);
      near(seconds(t.startUtc, e.startUtc!), 0, 90, "s", `${e.title}, start`);
    });
  });

  it("measures the worst cross-track within 0.02 NM and needle within 0.03", async () => {
    const { document } = await sampleDebrief(name);
    sampleTruth(name).truth.exercises.forEach((t, i) => {
      const facts = courses(document)[i]!.facts;
      // two swings of nearly the same size on either side: which is the larger may fall either way
      const sided = Math.abs(t.maxCrossTrackNm) > 0.1 ? (v: number) => v : Math.abs;
      near(sided(facts.crossTrack.maxNm), sided(t.maxCrossTrackNm), 0.02, "NM", t.title);
      near(sided(facts.needle.max), sided(t.maxNeedle), 0.03, "of full scale", t.title);
    });
  });

  it("has the true mean wind of each exercise within its 95 % ellipse", async () => {
    const { document } = await sampleDebrief(name);
    sampleTruth(name).truth.exercises.forEach((t, i) => {
      const wind = courses(document)[i]!.facts.wind!;
      expect(wind.knowledge).toBe("full");
      const { majorKt, minorKt, majorTrueDeg } = wind.ellipse95Kt!;
      const to = (from: number, kt: number) => [
        -kt * Math.sin(from * RADIANS),
        -kt * Math.cos(from * RADIANS),
      ];
      const [east, north] = to(wind.fromTrueDeg!, wind.speedKt!);
      const [trueEast, trueNorth] = to(t.windFromTrueDeg, t.windKt);
      const e = trueEast! - east!;
      const n = trueNorth! - north!;
      const along = e * Math.sin(majorTrueDeg * RADIANS) + n * Math.cos(majorTrueDeg * RADIANS);
      const square = e * Math.cos(majorTrueDeg * RADIANS) - n * Math.sin(majorTrueDeg * RADIANS);
      const distance = Math.hypot(along / majorKt, square / minorKt);
      if (!(distance <= 1))
        expect.fail(`${t.title}: true wind at ${distance} of the ellipse (${along}, ${square} kt)`);
    });
  });

  it("has the correction that the true wind needed within its 95 % doubt", async () => {
    const { document } = await sampleDebrief(name);
    sampleTruth(name).truth.exercises.forEach((t, i) => {
      const { neededDeg, doubt95Deg } = courses(document)[i]!.facts.windCorrection!;
      near(neededDeg, t.neededCorrectionDeg, doubt95Deg, "°", t.title);
    });
  });
});

describe("strong-crosswind-badly-corrected against its script", () => {
  const DRIFTS = new Set(["wind-correction-overdone", "wind-correction-let-go"]);

  it("tells when the needle told and when the pilot corrected within 3 s, when the track was off within 20 s", async () => {
    const { document } = await sampleDebrief("strong-crosswind-badly-corrected");
    sampleTruth("strong-crosswind-badly-corrected").truth.exercises.forEach((t, i) => {
      const drift = t.events.find((v) => DRIFTS.has(v.code))!;
      const found = courses(document)[i]!.facts.excursions.reduce((a, b) =>
        Math.abs(b.worstNeedle) > Math.abs(a.worstNeedle) ? b : a,
      );
      near(seconds(drift.quarterUtc!, found.quarterUtc!), 0, 3, "s", `${t.title}, quarter`);
      near(seconds(drift.untilUtc, found.correctedUtc!), 0, 3, "s", `${t.title}, corrected`);
      // the script lets go; a heading that wanders by 2° over 20 s moves when the track passes 3°
      near(seconds(drift.utc, found.trackOffUtc), 0, 20, "s", `${t.title}, track off`);
      expect(found.leadS).toBe(seconds(found.trackOffUtc, found.correctedUtc!));
      expect(found.silentS).toBe(seconds(found.trackOffUtc, found.quarterUtc!));
      expect(found.side).toBe(t.maxCrossTrackNm > 0 ? "right" : "left");
    });
  });

  it("names the cause that the script flew", async () => {
    const { document } = await sampleDebrief("strong-crosswind-badly-corrected");
    const codes = document.exercises.map((e) => e.findings.map((f) => f.code));
    expect(codes[0]).toContain("over-corrected");
    expect(codes[1]).toContain("wind-uncorrected");
    expect(codes[2]).toContain("under-corrected");
    expect(codes[3]).toContain("wind-uncorrected");
  });
});

describe("the other scripts", () => {
  it("needle-chased: chased on three courses, not on the tidy last", async () => {
    const { document } = await sampleDebrief("needle-chased");
    expect(document.exercises.map((e) => e.findings[0]!.code)).toEqual([
      "chased",
      "chased",
      "chased",
      "tracked-within",
    ]);
  });

  it("calm-and-tidy: nothing to say but how well it was tracked", async () => {
    const { document } = await sampleDebrief("calm-and-tidy");
    expect(document.exercises.flatMap((e) => e.findings.map((f) => f.code))).toEqual(
      new Array(4).fill("tracked-within"),
    );
  });
});

describe.each(HOLD_SAMPLES)("the hold of %s against the simulator's own truth", (name) => {
  const both = async () => {
    const { document } = await sampleDebrief(name);
    const [measured, ...others] = holds(document);
    expect(others).toEqual([]);
    return { facts: measured!.facts, record: measured!, truth: sampleTruth(name).truth.holds[0]! };
  };

  it("is found from the first pass of the fix within 6 s to the last within 5 s, with its laps, side and entry", async () => {
    const { facts, record, truth } = await both();
    // laps that drifted in 25 kt show the fix 0.15 NM aside, and the entry begins where it was nearest to that
    near(seconds(truth.t0, record.startUtc!), 0, 6, "s", "first pass");
    near(seconds(truth.t1, record.endUtc!), 0, 5, "s", "last pass");
    expect(facts.laps.length).toBe(truth.laps.length);
    expect(facts.turns).toBe(truth.turn);
    expect(facts.asFlown!.turns).toBe(truth.turn);
    expect(facts.entry!.flown).toBe(truth.entry);
    expect([facts.entry!.asked, ...facts.entry!.alsoAllowed]).toContain(truth.entrySector);
  });

  it("has leg times within 4 s, the outbound heading within its doubt and 2°, the roll-out within 0.02 NM", async () => {
    const { facts, truth } = await both();
    truth.laps.forEach((t, i) => {
      const lap = facts.laps[i]!;
      // 3 s is the aim for 95 % of the legs; the truth ends a turn where the heading is 3° off, the log where it slows
      near(lap.outbound.betweenTurnsS, t.outboundS, 4, "s", `lap ${i + 1} outbound`);
      near(lap.inbound!.seconds, t.inboundS, 4, "s", `lap ${i + 1} inbound`);
      near(lap.rollOut!.acrossNm, t.rolloutCrossTrackNm, 0.02, "NM", `lap ${i + 1}`);
      nearDirection(
        lap.outbound.headingTrueDeg!,
        t.meanOutboundHeadingTrueDeg!,
        Math.min(2, lap.outbound.correction95Deg!),
        `lap ${i + 1} outbound`,
      );
    });
  });

  it("asks for the racetrack that the true wind of each lap asked for, within its doubt", async () => {
    const { facts, truth } = await both();
    truth.laps.forEach((t, i) => {
      const { solved, doubt } = facts.laps[i]!;
      if (!solved || "none" in solved) throw new Error(`lap ${i + 1}: nothing closes`);
      // the truth is of the wind at the start of the lap, the estimate of its mean: a wander of 1 kt over 900 s parts them
      // by 0.4 kt rms in a lap of 4 min, which is 0.85 s in this hold, 1.7 s at 95 %; the heading is met within 1°
      const heading = doubt!.outboundCorrection95Deg + 1;
      nearDirection(solved.outboundHeadingTrueDeg, t.solvedOutboundHeadingTrueDeg!, heading, `lap ${i + 1}`);
      near(solved.outboundS, t.solvedOutboundS!, doubt!.outbound95S + 1.7, "s", `lap ${i + 1}`);
    });
  });
});

describe("what each hold shows", () => {
  const codes = async (name: string) => {
    const { document } = await sampleDebrief(name);
    return holds(document)[0]!.findings.map((f) => f.code);
  };

  it("well flown: nothing to say but that", async () => {
    expect(await codes("hold-direct-well-flown")).toEqual(["hold-well-flown"]);
  });

  it("outbound flown parallel: every lap, and it leads", async () => {
    const { document } = await sampleDebrief("hold-outbound-flown-parallel");
    const [lead] = holds(document)[0]!.findings;
    expect(lead!.code).toBe("outbound-parallel");
    expect([lead!.facts.lap, ...String(lead!.facts.alsoLaps).split(" ")].map(Number).sort()).toEqual([
      1, 2, 3, 4,
    ]);
  });

  it("three times the inbound correction outbound, where the wind asked for less: too much", async () => {
    expect((await codes("hold-teardrop-left-turns"))[0]).toBe("outbound-overcorrected");
  });

  it("half of the correction, by distance: parallel, and no leg time is held against it", async () => {
    const found = await codes("hold-by-distance");
    expect(found[0]).toBe("outbound-parallel");
    expect(found).not.toContain("leg-time-off");
  });
});

describe.each(APPROACH_SAMPLES)("the approach of %s against the simulator's own truth", (name) => {
  const both = async () => {
    const { document } = await sampleDebrief(name);
    const [measured, ...others] = approaches(document);
    expect([others, document.exercises.length]).toEqual([[], 1]);
    return {
      facts: measured!.facts,
      verdicts: measured!.verdicts,
      truth: sampleTruth(name).truth.approaches![0]!,
    };
  };

  it("passes the final fix and the threshold within 2 s, begins the climb within 5 s", async () => {
    const { facts, truth } = await both();
    near(seconds(truth.finalFixUtc!, facts.finalFixPassage!.utc), 0, 2, "s", "final fix");
    expect(facts.outcome).toBe(truth.outcome);
    if (truth.missedUtc) near(seconds(truth.missedUtc, facts.missed!.startUtc), 0, 5, "s", "climb");
    else near(seconds(truth.thresholdUtc!, facts.landing!.thresholdUtc), 0, 2, "s", "threshold");
  });

  it("has the overshoot within 0.02 NM, and the heights within their doubt", async () => {
    const { facts, truth } = await both();
    const { finalFixPassage: fix, intercept, minimum } = facts;
    // on an arc the turn is led, and the truth counts no overshoot
    if (truth.interceptDeg !== null) near(intercept!.overshootNm, truth.overshootNm, 0.02, "NM");
    near(fix!.altitudeFt!, truth.finalFixFt!, fix!.altitude95Ft!, "ft", "final fix");
    if (truth.missedUtc) near(minimum!.lowestFt!, truth.lowestFt, minimum!.doubt95Ft!, "ft", "lowest");
  });

  it("has verdicts, none of them wrong: every needle and height that is told lies as the truth has it", async () => {
    const { verdicts, truth } = await both();
    expect(verdicts.length).toBeGreaterThan(4);
    const fix = verdicts.find((v) => v.criterion === "approach-fix-height")!;
    expect(fix.verdict === "not met").toBe(false); // all of them pass it within 20 ft of 2,100
    expect(Math.abs(truth.finalFixFt! - 2100)).toBeLessThan(100);
  });
});

describe("what each approach shows", () => {
  const shown = async (name: string) => {
    const [record] = approaches((await sampleDebrief(name)).document);
    const verdicts = Object.fromEntries(record!.verdicts.map((v) => [v.criterion, v.verdict]));
    return { codes: record!.findings.map((f) => f.code), verdicts, facts: record!.facts };
  };

  it("tidy: nothing to say but how well it was held, stable at both gates", async () => {
    const { codes, verdicts } = await shown("approach-tidy-precision");
    expect(codes).toEqual(["final-within", "glide-path-within", "landed"]);
    expect(verdicts).toMatchObject({
      "approach-needle": "met",
      "approach-gate-1000-needle": "met",
      "approach-gate-500-needle": "met",
      "approach-gate-500-sink": "met",
    });
  });

  it("chased: it leads, and the needle was never far off", async () => {
    const { codes, facts, verdicts } = await shown("approach-track-chased");
    expect(codes[0]).toBe("final-chased");
    expect(facts.causes).toEqual([{ cause: "chased", share: 1 }]);
    expect(verdicts["approach-needle"]).toBe("met");
  });

  it("below the minimum: it leads, and is not met though the datum is not known", async () => {
    const { codes, verdicts, facts } = await shown("approach-below-minimum");
    expect(codes[0]).toBe("below-minimum");
    expect(facts.height!.anchored).toBe("log");
    expect(verdicts["approach-minimum-below"]).toBe("not met");
  });

  it("unstable: both gates, the glide path not met, and continued to a landing", async () => {
    const { codes, verdicts, facts } = await shown("approach-unstable-continued");
    expect(codes.slice(0, 2)).toEqual(["unstable-at-gate", "unstable-at-gate"]);
    expect(verdicts).toMatchObject({
      "approach-glide-path": "not met",
      "approach-gate-1000-glide-path": "not met",
      "approach-gate-500-glide-path": "not met",
    });
    expect(facts.outcome).toBe("landed");
  });

  it("step-downs: levels at the step-down and above the minimum, nothing below a limit", async () => {
    const { codes, facts } = await shown("approach-step-downs");
    expect(codes.some((code) => code.startsWith("below"))).toBe(false);
    expect(facts.stepDowns[0]!.marginFt!).toBeGreaterThan(-facts.stepDowns[0]!.doubt95Ft!);
  });

  it("the wind let go: the track off leads, told before the needle was at a quarter", async () => {
    const { codes, facts } = await shown("approach-wind-let-go");
    // and why comes next: the script holds the course's own number
    expect(codes.slice(0, 2)).toEqual(["final-track-off", "wind-uncorrected"]);
    expect(facts.causes).toEqual([{ cause: "wind-uncorrected", share: 1 }]);
    const [excursion, ...others] = facts.excursions!;
    expect(others).toEqual([]);
    expect(excursion!.side).toBe("left");
    // the script corrects at 0.55 of the scale, and the turn back takes its time
    near(Math.abs(excursion!.worstNeedle), 0.6, 0.06, "of full scale");
    expect(seconds(excursion!.trackOffUtc, excursion!.correctedUtc!)).toBe(excursion!.leadS);
  });

  it("from an arc: said so, established before the fix", async () => {
    const { facts } = await shown("approach-from-arc");
    expect(facts.joinedFrom).toBe("arc");
    expect(facts.finalFixPassage!.established).toBe(true);
  });
});

describe.each(ARC_SAMPLES)("the arcs of %s against the simulator's own truth", (name) => {
  it("has each arc's worst distance within 0.05 NM, some of which was flown before the simulator counts it as joined", async () => {
    const { document } = await sampleDebrief(name);
    const arcs = document.exercises.filter((e) => e.kind === "arc");
    const truth = sampleTruth(name).truth.arcs!;
    expect(arcs.map((e) => e.title)).toEqual(truth.map((t) => t.title));
    arcs.forEach(({ facts, title }, i) => {
      near(Math.abs(facts!.deviation.maxNm), Math.abs(truth[i]!.maxDeviationNm), 0.05, "NM", title);
    });
  });

  it("tells the first as left to the wind, with its lead, and blames nothing on the second", async () => {
    const { document } = await sampleDebrief(name);
    const [first, second] = document.exercises.filter((e) => e.kind === "arc");
    const codes = first!.findings.map((f) => f.code);
    expect(codes).toEqual(
      expect.arrayContaining(["arc-wind-uncorrected", "arc-track-off", "arc-turned-off"]),
    );
    expect(second!.findings.map((f) => f.code)).toEqual(["arc-within"]);
    const excursion = first!.facts!.excursions![0]!;
    expect(excursion.causes).toEqual([{ cause: "wind-uncorrected", share: 1 }]);
    // the script corrects where the distance is 0.8 NM off the arc
    const corrected = excursion.worstCrossTrackNm;
    expect(excursion.side).toBe("left");
    near(Math.abs(corrected), 0.8, 0.05, "NM");
    expect(excursion.leadS!).toBeGreaterThan(excursion.silentS! + 30);
  });
});

describe.each(DESCENT_SAMPLES)("the descents of %s against the simulator's own truth", (name) => {
  it("has each height at the point within its doubt, and says which was late and which held up", async () => {
    const { document } = await sampleDebrief(name);
    const truth = sampleTruth(name).truth.descents!;
    document.exercises.forEach((e, i) => {
      if (e.kind !== "descent") throw new Error(`no descent: ${e.title}`);
      const { crossingAltitudeFt, toFt } = truth[i]!;
      const { overFt, doubt95Ft } = e.facts!.crossing!;
      near(overFt, crossingAltitudeFt - toFt, doubt95Ft, "ft", e.title);
    });
    const verdicts = document.exercises.map((e) => e.verdicts[0]!.verdict);
    expect(verdicts).toEqual(["not met", "cannot tell", "not met"]);
    expect(document.exercises[0]!.findings.map((f) => f.code)).toContain("descent-begun-late");
    expect(document.exercises[2]!.findings.map((f) => f.code)).toContain("descent-levelled-off");
  });
});
