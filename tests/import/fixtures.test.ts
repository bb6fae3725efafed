import { describe, expect, it } from "vitest";
import { droppedByCode, readLog, readPlaces } from "../../src/import/index.ts";
import { UnusableInput } from "../../src/quantity/issue.ts";
import { cleanTrack } from "../../src/track/index.ts";
import { READABLE, UNUSABLE } from "./expected.ts";
import { fixtureBytes, fixtureNames, fixtureText } from "./fixtures.ts";

const sum = (counts: Readonly<Record<string, number>>) => Object.values(counts).reduce((a, b) => a + b, 0);
const refusal = async (name: string): Promise<UnusableInput> => {
  const error: unknown = await readLog([fixtureBytes(name)], name).catch((e: unknown) => e);
  if (!(error instanceof UnusableInput)) expect.fail(`${name} was not refused: ${error}`);
  return error;
};

describe("by construction: files written for one case each", () => {
  it("names an expectation for every fixture, and a fixture for every expectation", () => {
    expect(fixtureNames()).toEqual([...Object.keys(READABLE), ...Object.keys(UNUSABLE)].sort());
  });

  it.each(Object.entries(READABLE))(
    "%s gives the points and issues that it holds",
    async (name, expected) => {
      const log = await readLog([fixtureBytes(name)], name);
      const cleaned = cleanTrack(log.track);
      expect([log.pointsSeen, log.track.length, cleaned.track.length]).toEqual(expected.points);
      expect([...log.issues, ...cleaned.issues].map((i) => i.code).sort()).toEqual(
        [...expected.codes].sort(),
      );
      expect(log.waypoints.length).toBe(expected.waypoints ?? 0);
      expect(log.routes.length).toBe(expected.routes ?? 0);
    },
  );

  it.each(Object.keys(READABLE))("%s loses no point without saying so", async (name) => {
    const log = await readLog([fixtureBytes(name)], name);
    expect(log.pointsSeen - log.track.length).toBe(sum(droppedByCode(log.issues)));
    const { track, dropped, issues } = cleanTrack(log.track);
    expect(log.track.length - track.length).toBe(sum(dropped));
    expect(droppedByCode(issues)).toEqual(dropped);
  });

  it.each(Object.keys(READABLE).filter((name) => name.endsWith(".gpx")))(
    "%s: every row names the line where its point begins",
    async (name) => {
      const lines = fixtureText(name).split(/\r\n|\r|\n/);
      const { track } = await readLog([fixtureBytes(name)], name);
      for (const line of track.line) expect(lines[line - 1]).toMatch(/<(\w+:)?trkpt/);
    },
  );

  it.each(Object.entries(UNUSABLE))("%s is refused with the reason and the place", async (name, codes) => {
    const error = await refusal(name);
    expect(error.issues.map((i) => i.code)).toEqual(codes);
    const [first] = error.issues;
    if (first?.code !== "broken-archive") expect(first?.severity).toBe("error");
    expect(first?.where.file).toBe(name);
    if (!name.endsWith(".zip")) expect(first?.where.line).toBeGreaterThan(0);
  });

  it.each(Object.keys(READABLE))(
    "%s reads the same in pieces of one byte and in pieces of seven",
    async (name) => {
      const bytes = fixtureBytes(name);
      const whole = await readLog([bytes], name);
      for (const size of bytes.length > 50_000 ? [7] : [1, 7]) {
        const pieces: Uint8Array[] = [];
        for (let at = 0; at < bytes.length; at += size) pieces.push(bytes.subarray(at, at + size));
        const { track, issues, waypoints, routes } = await readLog(pieces, name);
        expect(track).toEqual(whole.track);
        expect(issues.map((i) => i.code)).toEqual(whole.issues.map((i) => i.code));
        expect({ waypoints, routes }).toEqual({ waypoints: whole.waypoints, routes: whole.routes });
      }
    },
  );

  it("reads a file of nothing but routes as places, and refuses one without any", async () => {
    const places = await readPlaces([fixtureBytes("gpx-route-only.gpx")], "gpx-route-only.gpx");
    expect(places.routes.map((r) => [r.name, r.points.map((p) => p.ident)])).toEqual([
      ["Lesson 6", ["TARNO", "BELVO", ""]],
      ["One point", ["KESTI"]],
    ]);
    expect(places.waypoints.map((p) => p.ident)).toEqual(["TARNO", "BELVO"]);
    await expect(readPlaces([fixtureBytes("gpx-1.1-plain.gpx")], "plain.gpx")).rejects.toThrow("no-places");
  });

  it("reads routes alike with and without a prefix", async () => {
    const [plain, prefixed] = await Promise.all(
      ["gpx-waypoints-and-routes.gpx", "gpx-prefixed-route.gpx"].map((n) => readLog([fixtureBytes(n)], n)),
    );
    expect(prefixed!.routes).toEqual(plain!.routes);
    expect(prefixed!.waypoints).toEqual(plain!.waypoints);
    expect(plain!.waypoints[0]).toEqual({
      ident: "TARNO",
      latitude: 35.7,
      longitude: 172.4,
      altitude: 12 / 0.3048,
    });
    expect(plain!.routes[0]!.points[0]!.altitude).toBe(900 / 0.3048);
  });

  it("groups what is wrong by code, with its count and the first places", async () => {
    const error = await refusal("gpx-decimal-comma.gpx");
    expect(error.issues[1]).toEqual({
      code: "unreadable-position",
      severity: "warning",
      where: { file: "gpx-decimal-comma.gpx", line: 5, column: 4, point: 0 },
      facts: { lat: "35,600000", lon: "172.300000", count: 3, dropped: 3, lines: "5, 6, 7" },
    });
  });

  it("says where XML broke", async () => {
    const { issues } = await readLog([fixtureBytes("gpx-stray-close-tag.gpx")], "stray");
    expect(issues[0]!.where).toMatchObject({ file: "stray", line: 7 });
    expect(issues[0]!.facts.reason).toBe("unexpected close tag");
  });

  it("expands no entity of the file's own", async () => {
    const { track } = await readLog([fixtureBytes("xml-entity-bomb.gpx")], "bomb");
    expect(track.name).toBe("&c;");
  });
});
