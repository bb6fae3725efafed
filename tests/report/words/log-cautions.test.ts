import { describe, expect, it } from "vitest";
import { UnusableInput } from "../../../src/quantity/issue.ts";
import { debriefText, fileStem, issueSentence, logCautions, shownName } from "../../../src/report/index.ts";
import { debriefOf, gpxText, type LoggedPoint } from "../../support/debriefed.ts";

/** North along a meridian at 100 kt from a point over open sea, a point each `every` seconds; goes on after a silence from where it fell silent. */
function northward(points: number, every: number, silence = 0): LoggedPoint[] {
  return Array.from({ length: points }, (_, i) => {
    const flown = i * every;
    const seconds = flown + (i >= points / 2 ? silence : 0);
    return { latitude: 35 + (flown * 100) / 3600 / 60, longitude: 172, seconds };
  });
}
const cautionsOf = async (points: readonly LoggedPoint[]) =>
  logCautions((await debriefOf(gpxText(points), null)).document);

describe("by construction: what must be known of a log before the rest is believed", () => {
  it("a log of a point a second that went somewhere has no caution", async () => {
    expect(await cautionsOf(northward(600, 1))).toEqual([]);
  });

  it("a log whose times have no date is of no known day", async () => {
    const undated = northward(600, 1).map((p) => ({
      ...p,
      seconds: p.seconds! - Date.UTC(2026, 9, 17, 1) / 1000,
    }));
    const text = debriefText((await debriefOf(gpxText(undated), null)).document);
    expect(text).toContain("date not known, 00:00 to 00:09 UTC");
    expect(text).not.toContain("1970,");
  });

  it("points in one place, and two points, are no flight", async () => {
    const still = Array.from({ length: 60 }, (_, i) => ({ latitude: 35, longitude: 172, seconds: i }));
    expect((await cautionsOf(still))[0]).toMatch(
      /^There is no flight in this log: all its points lie in one place/,
    );
    expect((await cautionsOf(northward(2, 1)))[0]).toMatch(
      /^There is no flight in this log: only 2 of its points/,
    );
  });

  it("a silence of an hour is told with when it began, and stands at the top of the text", async () => {
    const points = northward(600, 1, 3600);
    const [silence] = await cautionsOf(points);
    expect(silence).toContain("The log is silent for 1 h 00 min from 17 October 2026, 01:04 UTC");
    const { document } = await debriefOf(gpxText(points), null);
    const text = debriefText(document).replace(/\s+/g, " ");
    expect(text.indexOf("is silent for")).toBeGreaterThan(0);
    expect(text.indexOf("is silent for")).toBeLessThan(text.indexOf(document.caution.slice(0, 30)));
  });

  it("a silence of 40 days parts two flights instead of being flown across", async () => {
    const { document } = await debriefOf(gpxText(northward(600, 1, 40 * 86_400)), null);
    expect(document.log.flights).toHaveLength(2);
    expect(document.log.longestGapS).toBeLessThan(600);
  });

  it("a point each 30 s is said to be sparse, and is the reason why there is no wind", async () => {
    const points = northward(40, 30);
    expect((await cautionsOf(points)).join(" ")).toContain("a point only every 30 seconds");
    const text = debriefText((await debriefOf(gpxText(points), null)).document).replace(/\s+/g, " ");
    expect(text).toContain("with 30 seconds between its points the turns are not seen");
  });

  it("a log written backwards is refused with what to do", async () => {
    const error = await debriefOf(gpxText(northward(100, 1).reverse()), null).catch((e: unknown) => e);
    expect(error).toBeInstanceOf(UnusableInput);
    const sentence = issueSentence((error as UnusableInput).issues[0] as never);
    expect(sentence).toMatch(/times run backwards: 99 of its 100 points .* Sort the log by time/);
  });
});

describe("by construction: names that come from files", () => {
  it("lose what would break the line or turn its order, and nothing else", () => {
    expect(shownName('a<b>"c".gpx')).toBe('a<b>"c".gpx');
    expect(shownName("evil\u202Excod.gpx\nsecond")).toBe("evil xcod.gpx second");
    const long = shownName(`${"x".repeat(400)}.gpx`);
    expect(long.length).toBeLessThanOrEqual(121);
    expect(long.endsWith(".gpx")).toBe(true);
  });

  it.each([
    ["../../etc/log.gpx", "log"],
    ["C:\\flights\\log.gpx", "log"],
    ['what? "this": <log>.gpx', "what_ _this_ _log_"],
    [".gpx", "flight"],
  ])("%j is saved as %j", (name, stem) => expect(fileStem(name)).toBe(stem));
});
