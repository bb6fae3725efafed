import { expect, test } from "vitest";
import {
  clockSeconds,
  day,
  duration,
  magneticDirection,
  plusMinus,
  sided,
  trueDirection,
} from "../../src/index.ts";
import { besideCourse } from "../../web/drawings/words.ts";

test("north is 360 and not 000 (common practice, no source)", () => {
  expect(trueDirection(0)).toBe("360°T");
  expect(trueDirection(359.6)).toBe("360°T");
  expect(trueDirection(0.6)).toBe("001°T");
  expect(magneticDirection(47.4)).toBe("047°M");
});

test("left and right are letters, never signs, and nothing has no side (look of the sheet)", () => {
  expect(sided(0.56, 2, " NM")).toBe("0.56 NM R");
  expect(sided(-7.4, 0, "°")).toBe("7° L");
  expect(sided(-0.004, 2, " NM")).toBe("0.00 NM");
});

test("a doubt too small for its digits is not called zero", () => {
  expect(plusMinus(0.0035, 2)).toBe("± under 0.01");
  expect(plusMinus(0.02, 2, " NM")).toBe("± 0.02 NM");
});

test("times are UTC as ISO 8601 writes them, whatever the zone of the machine", () => {
  expect(clockSeconds("2026-10-17T09:44:10Z")).toBe("09:44:10");
  expect(day("2026-10-17T23:59:59Z")).toBe("17 October 2026");
  expect(duration(3900)).toBe("1 h 05 min");
  expect(duration(250)).toBe("4 min 10 s");
  expect(duration(29.4)).toBe("29 s");
});

test("on course is said only while the needle is within a quarter; beside a station it is far off in no distance", () => {
  expect(besideCourse(0.003, 0.1)).toBe("on course");
  expect(besideCourse(-0.003, -0.58)).toBe("under 0.01 NM left of course");
  expect(besideCourse(0.12, 0.2)).toBe("0.12 NM right of course");
});
