/** Holds as typed: what is read, in which reference, and what is refused. Forms: common practice, no source. */
import { describe, expect, it } from "vitest";
import { racetrackFor, readHold, type TypedHold } from "../../src/hold/index.ts";
import { issueSentence } from "../../src/report/index.ts";
import { HOLDING } from "../../src/standard/holding.ts";
import { near } from "../support/near.ts";

const GIVEN: TypedHold = { inbound: "247", tas: "100", wind: "192/20" };
function read(more: TypedHold) {
  const { asked, issues } = readHold({ ...GIVEN, ...more });
  if (!asked) throw new Error(JSON.stringify(issues));
  return asked;
}
const refused = (more: TypedHold) =>
  readHold({ ...GIVEN, ...more }).issues.map(({ code, where }) => `${where.path} ${code}`);

describe("a hold as typed", () => {
  it.each(["192/20", " 192 / 20 kt", "192@20", "192°/20KT", "192/20 kts", "192M/20"])("wind %s", (wind) => {
    expect(read({ wind })).toMatchObject({ reference: "magnetic", windFromDeg: 192, windKt: 20 });
  });

  it("takes the wind in the reference of the course unless it is marked", () => {
    expect(read({ inbound: "247T" })).toMatchObject({ reference: "true", inboundDeg: 247, windFromDeg: 192 });
    expect(refused({ wind: "192T/20" })).toEqual(["wind hold-mixed-references"]);
    expect(refused({ inbound: "247T", wind: "192M/20" })).toEqual(["wind hold-mixed-references"]);
    // true = magnetic + variation, east positive
    expect(read({ wind: "192T/20", variation: "3E" }).windFromDeg).toBe(189);
    expect(read({ wind: "192T/20", variation: "3W" }).windFromDeg).toBe(195);
    expect(read({ inbound: "247T", wind: "192M/20", variation: "3E" }).windFromDeg).toBe(195);
  });

  it("tells the course of a station from the compass, where its declination is not the variation", () => {
    // a course of 247 by a station of 8 east is 255 true, and 252 by a compass of 3 east; so is a wind along it
    const along = { wind: "255T/20", variation: "3E", declination: "8E" };
    expect(read(along)).toMatchObject({ inboundDeg: 247, windFromDeg: 252, compassDeg: 5 });
    const { solved } = racetrackFor(read(along));
    if ("none" in solved) throw new Error(solved.none);
    near(solved.inboundCorrectionDeg, 0, 1e-9, "°");
    near(solved.inboundHeadingDeg, 252, 1e-9, "°");
    near(solved.outboundHeadingDeg, 72, 1e-9, "°");
    expect(read({ ...along, wind: "252/20" }).windFromDeg).toBe(252);
    expect(refused({ declination: "8E" })).toEqual(["variation hold-field-missing"]);
    expect(refused({ declination: "8" })).toEqual(["declination hold-field-unreadable"]);
    expect(read({ ...along, inbound: "255T" })).toMatchObject({ compassDeg: 0, windFromDeg: 255 });
  });

  it("has the standard’s leg, bank and rate where none is typed", () => {
    expect(read({}).leg).toEqual({ by: "inbound-time", seconds: 60 });
    expect(read({ altitude: "14,001" }).leg).toEqual({ by: "inbound-time", seconds: 90 }); // FAA AIM 5-3-8 j.4
    expect(read({ timing: "icao" }).leg).toEqual({ by: "outbound-clock", seconds: 60 });
    expect(read({}).mostBankDeg).toBe(HOLDING.us.mostBank);
    expect(read({ timing: "ICAO" }).mostBankDeg).toBe(HOLDING.icao.mostBank);
    expect(read({ bank: "20", rate: "1.5" })).toMatchObject({ mostBankDeg: 20, turnRateDegS: 1.5 });
  });

  it.each([
    ["1 min", { by: "inbound-time", seconds: 60 }],
    ["90 s", { by: "inbound-time", seconds: 90 }],
    ["4 NM", { by: "distance", distance: 4 }],
  ])("leg %s", (leg, expected) => {
    expect(read({ leg }).leg).toEqual(expected);
  });

  it.each<[TypedHold, string]>([
    [{ inbound: "" }, "inbound hold-field-missing"],
    [{ inbound: "400" }, "inbound hold-field-unreadable"],
    [{ tas: "fast" }, "tas hold-field-unreadable"],
    [{ tas: "5" }, "tas hold-field-out-of-range"],
    [{ wind: "20" }, "wind hold-field-unreadable"],
    [{ wind: "192/400" }, "wind hold-field-out-of-range"],
    [{ turns: "up" }, "turns hold-field-unreadable"],
    [{ leg: "4" }, "leg hold-field-unreadable"],
    [{ leg: "1 s" }, "leg hold-field-out-of-range"],
    [{ altitude: "FL90" }, "altitude hold-field-unreadable"],
    [{ variation: "3" }, "variation hold-field-unreadable"],
  ])("%j is refused", (typed, expected) => {
    expect(refused(typed)).toEqual([expected]);
  });

  it("tells all that is wrong at once", () => {
    expect(readHold({}).issues.map(({ where }) => where.path)).toEqual(["inbound", "tas", "wind"]);
  });
});

describe("the answer", () => {
  it("gives 2.85 times and 70 s for 20 kt square to the course at 100 kt (worked table, own derivation flown by integration)", () => {
    const { solved, rules, stillAir } = racetrackFor(read({ wind: "157/20" }));
    if ("none" in solved) return expect.fail(solved.none);
    near(solved.factor!, 2.85, 0.005);
    near(solved.outboundS, 70, 0.5, "s");
    near(stillAir.outboundHeadingDeg, 67, 1e-9, "degrees"); // the reciprocal of 247
    near(stillAir.outboundS, 60, 1e-9, "s");
    expect(rules.map(({ factor }) => factor)).toEqual([1, 2, 3]);
    // (3 - m) crosswind / 60 NM, to the lee: common approximation, within a tenth of a mile here
    near(rules[0]!.missNm, (2 * 20) / 60, 0.1, "NM");
    near(rules[1]!.missNm, 20 / 60, 0.1, "NM");
  });

  it("depends on the angle between wind and course only, whatever the reference", () => {
    const [magnetic, wholly] = [read({}), read({ inbound: "007T", wind: "312/20" })].map(racetrackFor);
    near(
      (wholly!.solved as { factor: number }).factor,
      (magnetic!.solved as { factor: number }).factor,
      1e-9,
    );
  });

  it("says why nothing closes, and the limit of the standard at the height (FAA AIM 5-3-8 j.2: 200 kt to 6,000 ft)", () => {
    expect(racetrackFor(read({ wind: "247/60" })).solved).toEqual({
      none: "inbound-too-short",
      leastInboundS: expect.closeTo((60 * 120) / 40, 6), // by hand: 120 s of turning at 60 kt, flown back at 40 kt
    });
    expect(racetrackFor(read({ wind: "157/120" })).solved).toEqual({ none: "wind-too-strong" });
    expect(racetrackFor(read({ altitude: "6000" })).mostIndicatedKt).toBe(200);
    expect(racetrackFor(read({})).mostIndicatedKt).toBeNull();
  });
});

describe("what is refused says what was most likely meant", () => {
  const said = (more: TypedHold) =>
    readHold({ ...GIVEN, ...more }).issues.map((issue) => issueSentence({ ...issue, where: {} }));
  it.each<[TypedHold, string]>([
    [{ inbound: "361" }, "A direction is 360 at most."],
    [{ wind: "361/10" }, "A direction is 360 at most."],
    [{ tas: "92,5" }, "Decimals take a point, as in 2.5."],
    [{ leg: "1,5 NM" }, "Decimals take a point, as in 2.5."],
    [{ wind: "192/2,5" }, "Decimals take a point, as in 2.5."],
    [{ tas: "0" }, "0 kt is out of range for the true airspeed: 30 to 600 kt."],
    [{ tas: "-5" }, "-5 kt is out of range for the true airspeed: 30 to 600 kt."],
    [{ bank: "60" }, "60° is out of range for the bank: 5 to 45°."],
    [{ rate: "0" }, "0°/s is out of range for the turn rate: 0.5 to 6°/s."],
    [{ leg: "0 s" }, "0 s is out of range for the leg: 10 to 600 s."],
    [{ leg: "-1 min" }, "cannot be read as the leg. Write it as in 1 min, 90 s or 4 NM."],
  ])("%j: %s", (typed, sentence) => {
    expect(said(typed)).toHaveLength(1);
    expect(said(typed)[0]).toContain(sentence);
  });
  it("north is 360, written either way", () => {
    for (const inbound of ["360", "0", "000"]) expect(said({ inbound })).toEqual([]);
  });
});
