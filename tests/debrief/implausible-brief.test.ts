import { describe, expect, it } from "vitest";
import { debriefText, logCautions } from "../../src/report/index.ts";
import { debriefOf, gpxText, type LoggedPoint, SAMPLES, sampleDebrief } from "../support/debriefed.ts";

/** Due north at 100 kt along a meridian, a point a second. */
const north: LoggedPoint[] = Array.from({ length: 600 }, (_, i) => ({
  latitude: 35.6 + (i * 100) / 3600 / 60,
  longitude: 172.3,
  seconds: i,
}));

const brief = (fix: string, tas = 100) =>
  `brief: 1\ntitle: North\naircraft: { tas_kt: ${tas} }\nfixes:\n  TARNO: { ${fix} }\nexercises:\n  - { course: 357.5, from: TARNO, scale: vor }\n`;
const cautionsOf = async (fix: string, tas?: number) =>
  logCautions((await debriefOf(gpxText(north), brief(fix, tas))).document);

describe("by construction: a flight due north at 100 kt near 35.6N 172.3E, where WMM2025 has some 2.5°E", () => {
  it("a brief that fits it is not doubted", async () => {
    expect(await cautionsOf("lat: 35.6, lon: 172.3, kind: vor, declination: 2.5")).toEqual([]);
  });

  it("a declination of an old survey, 3° off, is let be", async () => {
    expect(await cautionsOf("lat: 35.6, lon: 172.3, kind: vor, declination: 5.5")).toEqual([]);
  });

  it.each([
    ["lat: 35.6, lon: -172.3", /TARNO lies 7\d\d NM from .* Check the sign of its longitude;/],
    ["lat: -35.6, lon: 172.3", /TARNO lies 4,2\d\d NM from .* Check the sign of its latitude;/],
    ["lat: 5, lon: 60", /TARNO lies 6,\d\d\d NM from .* is a sign or a digit wrong\? Correct its/],
  ])("%s is far away, and that is said at the top", async (fix, words) => {
    const { document } = await debriefOf(gpxText(north), brief(`${fix}, kind: vor`));
    expect(logCautions(document)[0]).toMatch(words);
    const text = debriefText(document).replace(/\s+/g, " ");
    expect(text.split("NM from this flight")).toHaveLength(2);
    expect(text.indexOf("NM from this flight")).toBeLessThan(text.indexOf(document.caution.slice(0, 30)));
  });

  it.each([-2.5, 92.5])(
    "a declination of %d disagrees with the model: said, and used as written",
    async (d) => {
      const { document } = await debriefOf(
        gpxText(north),
        brief(`lat: 35.6, lon: 172.3, kind: vor, declination: ${d}`),
      );
      expect(logCautions(document)[0]).toMatch(
        /declination of TARNO .* variation there is 2\.\d°E by WMM2025\./,
      );
      expect(document.brief!.fixes[0]!.ident).toBe("TARNO");
    },
  );

  it.each([250, 45])("an airspeed of %d kt fits no wind to be met: said, and not used", async (tas) => {
    const fix = "lat: 35.6, lon: 172.3, kind: vor, declination: 2.5";
    const { document } = await debriefOf(gpxText(north), brief(fix, tas));
    expect(logCautions(document)[0]).toMatch(
      new RegExp(`airspeed of ${tas} kt .* ground speed is mostly 100 kt, .* not used`),
    );
    expect(document.wind!.priorsUsed).toEqual([]);
  });

  it("an airspeed of 130 kt needs a wind of 30 kt, which there is", async () => {
    expect(await cautionsOf("lat: 35.6, lon: 172.3, kind: vor, declination: 2.5", 130)).toEqual([]);
  });
});

describe("by construction: a runway of number 36 on a meridian near 35.6N 172.3E, where WMM2025 has some 2.5°E", () => {
  const runway = (ident: string, end: string) =>
    `brief: 1\nexercises:\n  - approach: { runway: { ident: "${ident}", threshold: [35.7, 172.3], end: ${end}, elevation_ft: 0 }, guidance: lnav }\n`;
  const said = async (ident: string, end: string) =>
    logCautions((await debriefOf(gpxText(north), runway(ident, end))).document);

  it.each(["36", "36L", "RW36", "02", "34", ""])("as %s it is not doubted", async (ident) => {
    expect(await said(ident || "north", "[35.72, 172.3]")).toEqual([]);
  });
  it("its ends exchanged: that they may be is said", async () => {
    const [first, ...others] = await said("36", "[35.68, 172.3]");
    expect(first).toMatch(
      /runway 36 runs 17[78]°M from its threshold .* The runway’s ends may be exchanged\./,
    );
    expect(others).toEqual([]);
  });
  it("square to its number: that something is wrong is said, not that its ends are exchanged", async () => {
    const [first] = await said("36", "[35.7, 172.32]");
    expect(first).toMatch(/runway 36 runs 08[78]°M .* Its number, its threshold or its far end is wrong\./);
  });
});

it.each(SAMPLES)("the brief of %s fits its flight", async (name) => {
  const codes = (await sampleDebrief(name)).document.brief!.issues.map(({ code }) => code);
  expect(codes.filter((code) => /-(far|off)$/.test(code))).toEqual([]);
});

describe("by construction: a fix 40 NM aside of that flight due north, while another lies on it", () => {
  const two = (tarno: string, course: string) =>
    `brief: 1\nfixes:\n  KESTI: { lat: 35.7, lon: 172.3 }\n  BELVO: { lat: 35.62, lon: 172.3 }\n  TARNO: { ${tarno}, kind: vor }\nexercises:\n  - { leg: [BELVO, KESTI], scale: rnav-1 }\n  - { course: ${course}, from: TARNO }\n`;
  const said = async (tarno: string, course: string) =>
    logCautions((await debriefOf(gpxText(north), two(tarno, course))).document);

  // 0.82 degrees of longitude at 35.6N are 40 NM
  it("is doubted at the top", async () => {
    const [first, ...others] = await said("lat: 35.6, lon: 173.12", "0T");
    expect(first).toMatch(/TARNO lies (39|40|41) NM aside of this flight .* is a digit of its latitude/);
    expect(others).toEqual([]);
  });
  it.each([
    ["on the flight", "lat: 35.6, lon: 172.3", "0T"],
    ["15 NM off, not flown to", "lat: 35.6, lon: 172.6", "0T"],
  ])("%s it is not", async (_, tarno, course) => {
    expect(await said(tarno, course)).toEqual([]);
  });
  it("40 NM behind, of which the radial was flown, it is not", async () => {
    const behind = two("lat: 34.93, lon: 172.3", "0T").replace(
      / {2}- \{ leg.*\n/,
      "  - { descent: KESTI, to_ft: 1800 }\n",
    );
    const { document } = await debriefOf(gpxText(north), behind);
    expect(document.exercises.map(({ match }) => match !== null)).toContain(true);
    expect(logCautions(document)).toEqual([]);
  });
  it("where no place lies on the flight, it is the brief of another, and no fix is doubted alone", async () => {
    const other = two("lat: 35.6, lon: 173.12", "0T").replaceAll("lon: 172.3 ", "lon: 173.3 ");
    expect(logCautions((await debriefOf(gpxText(north), other)).document)).toEqual([]);
  });
  it.each([5, 20])("an airspeed of %d kt is said at the top and not used", async (tas) => {
    const fix = "lat: 35.6, lon: 172.3, kind: vor, declination: 2.5";
    expect((await cautionsOf(fix, tas))[0]).toContain(`a true airspeed of ${tas} kt does not fit the flight`);
  });
});
