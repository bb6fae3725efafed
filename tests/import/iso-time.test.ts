import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { IsoTimeReader } from "../../src/import/iso-time.ts";

const read = (text: string) => new IsoTimeReader().read(text);

describe("W3C XML Schema Part 2, 2nd ed., 3.2.7 (dateTime)", () => {
  it("takes noon at -05:00 for 17:00 UTC, the example of 3.2.7.1", () => {
    expect(read("2002-10-10T12:00:00-05:00")).toBe(Date.UTC(2002, 9, 10, 17));
  });
  it("takes 24:00:00 for the next midnight, the note of 3.2.7.1", () => {
    expect(read("1999-12-31T24:00:00Z")).toBe(Date.UTC(2000, 0, 1));
    expect(read("1999-12-31T24:00:01Z")).toBeNaN();
  });
  it("allows offsets up to 14:00 only", () => {
    expect(read("2026-10-17T12:00:00+14:00")).toBe(Date.UTC(2026, 9, 16, 22));
    expect(read("2026-10-17T12:00:00+15:00")).toBeNaN();
  });
  it("says when no zone was written", () => {
    const times = new IsoTimeReader();
    expect(times.read("2026-10-17T12:00:00")).toBe(Date.UTC(2026, 9, 17, 12));
    expect(times.zoned).toBe(false);
    times.read("2026-10-17T12:00:00Z");
    expect(times.zoned).toBe(true);
  });
});

describe("ECMA-262 Date.parse on the same text", () => {
  const offset = fc.constantFrom("Z", "+00:00", "-05:30", "+12:45", "-11:00");
  it("reads any time from year 0 to 9999 as Date does", () => {
    const date = fc.date({ min: new Date("0000-01-02"), max: new Date("9999-12-30"), noInvalidDate: true });
    fc.assert(
      fc.property(date, offset, (d, zone) => {
        const text = d.toISOString().replace("Z", zone);
        expect(read(text)).toBe(Date.parse(text));
        expect(read(text.replace("T", " "))).toBe(Date.parse(text));
      }),
      { numRuns: 2000 },
    );
  });
});

describe("RFC 3339 section 5.8 and ISO 8601: other forms that loggers write", () => {
  it.each([
    ["1985-04-12T23:20:50.52Z", Date.UTC(1985, 3, 12, 23, 20, 50, 520)],
    ["1996-12-19T16:39:57-08:00", Date.UTC(1996, 11, 20, 0, 39, 57)],
    ["1990-12-31T23:59:60Z", Date.UTC(1991, 0, 1)], // the leap second becomes the next second
    ["2026-10-17t09:44:10z", Date.UTC(2026, 9, 17, 9, 44, 10)],
    ["2026-10-17T09:44:10,5Z", Date.UTC(2026, 9, 17, 9, 44, 10, 500)],
    ["2026-10-17T09:44:10-0430", Date.UTC(2026, 9, 17, 14, 14, 10)],
    ["2026-10-17T09:44:10+12", Date.UTC(2026, 9, 16, 21, 44, 10)],
    [" 2026-10-17T09:44:10Z\n", Date.UTC(2026, 9, 17, 9, 44, 10)],
  ])("reads %s", (text, time) => expect(read(text)).toBe(time));

  it("keeps a fraction finer than a millisecond", () => {
    expect(read("2026-10-17T09:44:10.1234567Z") - Date.UTC(2026, 9, 17, 9, 44, 10)).toBeCloseTo(123.4567, 3);
  });

  it.each([
    "",
    "2026-10-17",
    "2026-10-17T09:44",
    "2026-13-17T09:44:10Z",
    "2026-02-29T09:44:10Z",
    "2026-10-00T09:44:10Z",
    "2026-10-17T25:00:00Z",
    "2026-10-17T09:60:00Z",
    "2026-10-17T09:44:10.Z",
    "2026-10-17T09:44:10Zulu",
    "2026-10-17T09:44:10 UTC",
    "2026/10/17T09:44:10Z",
    "17.10.2026 09:44:10",
    "2026-10-17T09:44:1OZ",
    "tomorrow at breakfast time",
  ])("refuses %j", (text) => expect(read(text)).toBeNaN());
});
