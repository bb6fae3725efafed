/** Several logs in one archive: flights at other times are flights of the file; what nobody can tell apart is left and said. */
import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { readLog } from "../../src/import/index.ts";
import { findFlights } from "../../src/track/index.ts";

/** North at 100 kt, a point every 10 s: by construction. */
function gpx(from: string, latitude: number, points = 60): string {
  const start = Date.parse(from);
  const point = (i: number) =>
    `<trkpt lat="${(latitude + (i * 10 * 100) / 3600 / 60).toFixed(6)}" lon="172.3"><time>${new Date(start + 10_000 * i).toISOString()}</time></trkpt>`;
  const rows = Array.from({ length: points }, (_, i) => point(i)).join("");
  return `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="test"><trk><trkseg>${rows}</trkseg></trk></gpx>`;
}

const untimed = gpx("2026-03-01T09:00:00Z", 35).replace(/<time>[^<]*<\/time>/g, "");

const read = (entries: Record<string, string>) => {
  const packed = zipSync(
    Object.fromEntries(Object.entries(entries).map(([name, text]) => [name, strToU8(text)])),
  );
  return readLog([packed], "two.kmz");
};

describe("an archive with several logs, by construction", () => {
  it("gives flights of two days as two flights of one file, in the order of time", async () => {
    const log = await read({
      "later.gpx": gpx("2026-03-02T09:00:00Z", 36),
      "notes.txt.jpg": "a picture",
      "earlier.gpx": gpx("2026-03-01T09:00:00Z", 35),
    });
    expect(log.file).toBe("two.kmz");
    expect(log.issues).toEqual([]);
    expect(log.pointsSeen).toBe(120);
    const flights = findFlights(log.track);
    expect(flights.map(({ span }) => [span.start, span.end])).toEqual([
      [0, 60],
      [60, 120],
    ]);
    expect(log.track.latitude[0]).toBeCloseTo(35, 6);
  });

  it("leaves one recorded at the same time, and one without times, and says how many", async () => {
    const log = await read({
      "a.gpx": gpx("2026-03-01T09:00:00Z", 35),
      "b.gpx": gpx("2026-03-01T09:05:00Z", 36),
      "c.gpx": untimed,
      "d.gpx": gpx("2026-03-02T09:00:00Z", 35),
    });
    expect(log.track.length).toBe(120);
    expect(log.issues).toEqual([
      { code: "more-in-archive", severity: "note", where: { file: "two.kmz" }, facts: { others: 2 } },
    ]);
  });

  it("of two entries that break off alike says which each is; of one alone the archive's name is enough", async () => {
    const cut = (day: number) => gpx(`2026-03-0${day}T09:00:00Z`, 35).replace("</trkseg>", "");
    const broken = (log: { issues: readonly { code: string; where: { file?: string } }[] }) =>
      log.issues.filter(({ code }) => code === "broken-xml").map(({ where }) => where.file);
    expect(broken(await read({ "a.gpx": cut(1), "week 2/b.gpx": cut(2) }))).toEqual([
      "two.kmz/a.gpx",
      "two.kmz/week 2/b.gpx",
    ]);
    expect(broken(await read({ "a.gpx": cut(1) }))).toEqual(["two.kmz"]);
  });

  it("goes past entries that hold no flight, and past broken ones", async () => {
    const log = await read({
      "a.txt": "no log at all",
      "b.gpx": gpx("2026-03-01T09:00:00Z", 35),
      "c.gpx": "<gpx><trk><trkseg>",
      "d.gpx": gpx("2026-03-02T09:00:00Z", 35),
    });
    expect(findFlights(log.track)).toHaveLength(2);
    expect(log.issues).toMatchObject([{ code: "more-in-archive", facts: { others: 2 } }]);
  });
});
