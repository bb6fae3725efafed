/** The panel for the next hold, filled from a sheet: magnetic, as published; and readable as typed. */
import { describe, expect, it } from "vitest";
import { type DebriefDocument, readHold } from "../../src/index.ts";
import { UNKNOWN_VARIATION } from "../../src/quantity/magnetic.ts";
import { filledFrom } from "../../web/next-hold.ts";
import { inventHold, THREE_LAPS, windRecordOf } from "./drawings/invented-hold.ts";

const facts = inventHold(THREE_LAPS).exercise.facts!;
const document = {
  variation: { degrees: 6, model: "WMM2025" },
  brief: { aircraft: { tasKt: 95, doubtKt: 5 } },
  wind: { ...windRecordOf({ from: 3, speed: 12 }), altitudeFt: 3000, priorsUsed: [] },
} as unknown as DebriefDocument;

describe("filled from a sheet", () => {
  it("a hold in its own wind: 253°T and a wind from 192°T are 247 and 186 with 6° east (true = magnetic + east)", () => {
    const typed = filledFrom(document, facts);
    expect(typed).toMatchObject({ inbound: "247", wind: "186/20", turns: "right", leg: "1 min", tas: "100" });
    expect(typed).toMatchObject({ altitude: "3000", windDoubt: "2.2", timing: "us" });
    expect(readHold(typed)).toMatchObject({ issues: [], asked: { reference: "magnetic", windFromDeg: 186 } });
  });

  it("with the declination of its station where that is not the variation of the day", () => {
    const old = { ...facts, variation: { ...facts.variation!, dayDegrees: 1 } };
    const typed = filledFrom(document, old);
    expect(typed).toMatchObject({ inbound: "247", wind: "191/20", declination: "6.0E", variation: "1.0E" });
    expect(readHold(typed).asked).toMatchObject({ inboundDeg: 247, windFromDeg: 191, compassDeg: 5 });
  });

  it("true and marked so where the variation is not known", () => {
    const typed = filledFrom(document, { ...facts, inboundMagneticDeg: null, variation: UNKNOWN_VARIATION });
    expect(typed).toMatchObject({ inbound: "253T", wind: "192T/20" });
    expect(readHold(typed).asked).toMatchObject({ reference: "true", inboundDeg: 253, windFromDeg: 192 });
  });

  it("without a hold, the wind of the day alone: 003°T is 357 with 6° east", () => {
    expect(filledFrom(document, null)).toMatchObject({ wind: "357/12", tas: "95" });
    expect(filledFrom(document, null).inbound).toBeUndefined();
  });
});
