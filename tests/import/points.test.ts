import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { distanceNm, type KnownPoints, pointsNamed, searchPoints } from "../../src/geodesy/index.ts";
import { readPoints } from "../../src/import/index.ts";
import { UnusableInput } from "../../src/quantity/issue.ts";
import { issueSentence } from "../../src/report/index.ts";

const bytes = (text: string) => [new TextEncoder().encode(text)];
const read = (text: string, file = "vale.csv") => readPoints(bytes(text), file);
const codes = async (text: string): Promise<string[]> => {
  try {
    return (await read(text)).issues.map((i) => i.code);
  } catch (error) {
    if (error instanceof UnusableInput) return error.issues.map((i) => i.code);
    throw error;
  }
};

const TABLE = `# Orsa Vale, invented
ident,lat,lon,kind,elevation_ft,declination,end lat,end lon,course,length_ft
TARNO,35.6,172.3,VOR,1200,2.5E,,,,
BELVO,N35°40'04.8",172.069,fix,,,,,,
KESTI,35.785,172.318,,,,,,,
LIND 22,35.7,172.2,runway,410,,35.69,172.19,,
`;

describe("by construction: a table of points", () => {
  it("gives idents, places, kinds, elevations, declinations and runways", async () => {
    const { points, runways, issues } = await read(TABLE);
    expect(issues).toEqual([]);
    expect(points.map(({ ident, kind }) => `${ident} ${kind}`)).toEqual([
      "TARNO vor",
      "BELVO waypoint",
      "KESTI waypoint",
      "LIND 22 runway",
    ]);
    expect(points[0]).toMatchObject({ latitude: 35.6, longitude: 172.3, elevation: 1200, declination: 2.5 });
    expect(points[1]!.latitude).toBeCloseTo(35.668, 9);
    expect(runways).toEqual([
      {
        ident: "LIND 22",
        threshold: { latitude: 35.7, longitude: 172.2 },
        end: { latitude: 35.69, longitude: 172.19 },
        elevation: 410,
      },
    ]);
  });

  it("is read as the README writes it, without a complaint", async () => {
    const readme = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
    const list = /```\n(ident,lat,lon[^`]*)```/.exec(readme)![1]!;
    const { points, runways, issues } = await read(list);
    expect(points).toHaveLength(4);
    expect(runways.map(({ ident }) => ident)).toEqual(["LIND 22", "LIND 04", "KESTI 09"]);
    expect(issues).toEqual([]);
  });

  it("is read alike with semicolons and decimal commas, metres and western declination", async () => {
    const { points } = await read("Name;Lat;Lon;Elev [m];Declination\nTARNO;35,6;172,3;304,8;2,5 W\n");
    expect(points[0]).toMatchObject({ latitude: 35.6, longitude: 172.3, declination: -2.5 });
    expect(points[0]!.elevation).toBeCloseTo(1000, 9); // exactly: 304.8 m = 1,000 ft by definition
  });

  it("prefers the ident to the name, whichever column comes first", async () => {
    const { points } = await read("name,ident,lat,lon\nTarno beacon,TARNO,35.6,172.3\n");
    expect(points[0]!.ident).toBe("TARNO");
  });

  it("gives both landing directions of a runway whose ident names two", async () => {
    const { runways } = await read(
      "ident,lat,lon,elevation,end lat,end lon,end elevation\nLIND 22/04,35.7,172.2,410,35.69,172.19,395\n",
    );
    expect(runways.map(({ ident, elevation }) => [ident, elevation])).toEqual([
      ["LIND 22", 410],
      ["LIND 04", 395],
    ]);
    expect(runways[1]!.threshold).toEqual(runways[0]!.end);
  });

  // WGS84: radius of curvature in the meridian M = a(1 - e²)/(1 - e² sin²φ)^1.5, so that 1 NM due north is 1852/M
  it("lays the far end of a runway from threshold, true course and length", async () => {
    const { runways } = await read(
      `ident,lat,lon,kind,course,length_m\nLIND 36,35.7,172.2,runway,360T,1852\n`,
    );
    const [a, f] = [6378137, 1 / 298.257223563];
    const e2 = f * (2 - f);
    const middle = Math.sin(((35.7 + 1 / 120) * Math.PI) / 180);
    const radius = (a * (1 - e2)) / (1 - e2 * middle ** 2) ** 1.5;
    expect(runways[0]!.end.latitude - 35.7).toBeCloseTo((1852 / radius) * (180 / Math.PI), 8);
    expect(runways[0]!.end.longitude).toBeCloseTo(172.2, 9);
  });

  it("turns a magnetic course by the declination of its row, and says where a model or a length was taken", async () => {
    const given = await read("ident,lat,lon,course,length_ft,declination\nA 27,0,10,270,3000,10E\n");
    expect(given.issues).toEqual([]);
    const { threshold, end } = given.runways[0]!;
    // 270°M with 10°E is 280°T: the end lies north of the threshold by the length times cos 280°
    expect((end.latitude - threshold.latitude) * 60).toBeCloseTo(
      (3000 * 0.3048 * Math.cos((280 * Math.PI) / 180)) / 1843, // a minute of latitude at the equator, m (WGS84)
      3,
    );
    expect(given.runways[0]).not.toHaveProperty("lengthAssumed");
    const { runways } = await read("ident,lat,lon,course\nA 27,35,172,270\n");
    expect(runways[0]).toMatchObject({ lengthAssumed: true });
    expect(await codes("ident,lat,lon,course\nA 27,35,172,270\n")).toEqual([
      "runway-length-assumed", // a warning stands before a note
      "runway-course-by-model",
    ]);
  });

  it("warns of a length that was taken: the width of a localizer hangs on it", async () => {
    const { issues } = await read("ident,lat,lon,course,declination\nA 27,35,172,270,2E\n");
    expect(issues).toMatchObject([
      { code: "runway-length-assumed", severity: "warning", facts: { ident: "A 27", lengthFt: 3000 } },
    ]);
  });

  it("tells how many places cannot be read, and where", async () => {
    const { issues } = await read("ident,lat,lon\nBELVO,35.6,172.1\nTARNO,,172.3\nKESTI,135.785,172.3\n");
    expect(issueSentence(issues[0]! as never)).toMatch(/2 waypoints or route points have .*: lines 3, 4\./);
  });

  const FAULTS: readonly (readonly [string, string, string[]])[] = [
    ["no headings", "35.6,172.3\n35.7,172.4\n", ["no-point-headings"]],
    ["a log instead of a list", "time,lat,lon\n10:00:00,35.6,172.3\n", ["no-point-headings"]],
    ["nothing beneath the headings", "ident,lat,lon\n", ["no-places"]],
    ["no readable place", "ident,lat,lon\nTARNO,95,172.3\nBELVO,35.6,172.1\n", ["unreadable-place"]],
    ["no ident", "ident,lat,lon\n,35.6,172.3\nBELVO,35.6,172.1\n", ["place-without-ident"]],
    ["an odd elevation", "ident,lat,lon,elevation\nTARNO,35.6,172.3,high\n", ["unreadable-value"]],
    ["a runway without end", "ident,lat,lon,kind\nLIND 22,35.7,172.2,runway\n", ["runway-without-direction"]],
    [
      "a runway 09 that points west",
      "ident,lat,lon,kind,declination,course,length_ft\nX 09,35.6,172.3,runway,2E,270T,2600\n",
      ["runway-off-its-number"],
    ],
    [
      "a runway of 56 NM",
      "ident,lat,lon,kind,end lat,end lon\nZ 36,35.672,172.395,runway,36.6,172.4\n",
      ["runway-too-long"],
    ],
    ["the same point twice", "ident,lat,lon\nTARNO,35.6,172.3\ntarno,35.6,172.3001\n", ["place-repeated"]],
    ["one ident at two places", "ident,lat,lon\nTARNO,35.6,172.3\nTARNO,36.6,172.3\n", ["ident-repeated"]],
    ["an unknown kind", "ident,lat,lon,kind\nTARNO,35.6,172.3,beacon?\n", ["unknown-kind"]],
  ];
  it("counts unknown kinds and doubles, and says them as more than a note", async () => {
    const { points, issues } = await read(
      [
        "ident,lat,lon,kind",
        ...["A,35.1,172.3,radio mast", "B,35.2,172.3,mast", "C,35.3,172.3,airport", "D,35.4,172.3,"],
        ...["E,35.5,172.3,VOR/DME", "E,35.5,172.3,vor", "A,35.1,172.3,ndb", "D,36.4,172.3,fix"],
      ].join("\n"),
    );
    expect(points.map(({ ident, kind }) => `${ident} ${kind}`)).toEqual([
      ...["A other", "B other", "C other", "D waypoint", "E vor", "D waypoint"],
    ]);
    expect(issues.map(({ code, severity, facts }) => [code, severity, facts.count])).toEqual([
      ["unknown-kind", "warning", 2],
      ["place-repeated", "warning", 2],
      ["ident-repeated", "warning", 1],
    ]);
    const words = issues.map((issue) => issueSentence(issue as never)).join(" ");
    expect(words).toMatch(/2 points have a kind that is not known here \(first: “radio mast”\)/);
    expect(words).toMatch(/one ident stands in the list for more than one place \(first: D\)/);
  });

  it("a route over waypoints of the same file makes no doubles of them", async () => {
    const at = 'lat="35.6" lon="172.3"><name>TARNO</name>';
    const gpx = `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1"><wpt ${at}</wpt><rte><rtept ${at}</rtept></rte></gpx>`;
    const { points, issues } = await read(gpx, "vale.gpx");
    expect({ points: points.length, issues }).toEqual({ points: 1, issues: [] });
  });

  it.each(FAULTS)("%s is told in one line of words", async (_, text, expected) => {
    expect(await codes(text)).toEqual(expected);
    const issues = await read(text).then(
      (list) => list.issues,
      (error: UnusableInput) => error.issues,
    );
    for (const issue of issues) {
      const sentence = issueSentence({ ...issue, where: { ...issue.where }, facts: { ...issue.facts } });
      expect(sentence).toMatch(/^vale\.csv.*\.$/);
      expect(sentence).not.toMatch(/undefined|NaN|\n/);
      expect(sentence).not.toContain(`${issue.code.replaceAll("-", " ")} (`);
    }
  });
});

describe("by construction: the forms that other programs write", () => {
  it("reads GPX waypoints and route points, and KML placemarks", async () => {
    const gpx = `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1"><wpt lat="35.6" lon="172.3"><ele>304.8</ele><name>TARNO</name></wpt>
      <wpt lat="35.61" lon="172.3"/><rte><rtept lat="35.668" lon="172.069"><name>BELVO</name></rtept></rte></gpx>`;
    const list = await read(gpx, "vale.gpx");
    expect(list.points.map(({ ident }) => ident)).toEqual(["TARNO", "BELVO"]);
    expect(list.points[0]!.elevation).toBeCloseTo(1000, 9);
    expect(list.issues.map((i) => i.code)).toEqual(["place-without-ident"]);
    const kml = `<kml xmlns="http://www.opengis.net/kml/2.2"><Placemark><name>KESTI</name><Point><coordinates>172.318,35.785</coordinates></Point></Placemark></kml>`;
    expect((await read(kml, "vale.kml")).points).toMatchObject([
      { ident: "KESTI", latitude: 35.785, longitude: 172.318 },
    ]);
  });
});

describe("by construction: idents that stand for several places", () => {
  const TWO = "ident,lat,lon\nTARNO,35.6,172.3\nTARNO,12,40\nTARNOVA,35.7,172.3\nUTARNO,35.6,172.3\n";

  it("keeps both and takes the one nearer to the flight", async () => {
    const list = await read(TWO);
    expect(list.points).toHaveLength(4);
    const known = (near: KnownPoints["near"]): KnownPoints => ({ ...list, near });
    expect(pointsNamed(known({ latitude: 12, longitude: 41 }), "tarno")[0]!.latitude).toBe(12);
    expect(pointsNamed(known({ latitude: 35, longitude: 172 }), "TARNO")[0]!.latitude).toBe(35.6);
  });

  it("finds by the beginning of an ident first, then by any part, the nearest first", async () => {
    const near = { latitude: 35.6, longitude: 172.3 };
    const found = searchPoints({ ...(await read(TWO)), near }, "tarno", 10);
    expect(found.map(({ ident, latitude }) => `${ident} ${latitude}`)).toEqual([
      "TARNO 35.6",
      "TARNOVA 35.7",
      "TARNO 12",
      "UTARNO 35.6",
    ]);
    expect(searchPoints({ ...(await read(TWO)), near }, "  ", 10)).toEqual([]);
  });

  // a minute of latitude at 45° is 1852.2 m on WGS84 (nautical mile, older definitions): 1.000 NM
  it("measures distances in nautical miles", () => {
    expect(
      distanceNm({ latitude: 45 - 1 / 120, longitude: 0 }, { latitude: 45 + 1 / 120, longitude: 0 }),
    ).toBeCloseTo(1852.2 / 1852, 3);
  });
});
