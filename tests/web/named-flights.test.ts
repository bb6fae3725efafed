/** Whose line of a table is whose flight, and what is said of it. */
import { describe, expect, it } from "vitest";
import { readLabelTable } from "../../src/index.ts";
import { lackingWords, namedFlights, namingWords, tablesApart } from "../../web/named-flights.ts";

const row = (id: string, ...fileNames: string[]) => ({ id, fileNames });
const line = (file: string, pilot: string | null, aircraft: string | null = null) => ({
  file,
  pilot,
  aircraft,
});

describe("a table of who flew what", () => {
  it("names flights by any of their files, in whatever folder the table saw them; what it does not know is counted", () => {
    const rows = [row("1", "one.gpx", "one.yaml"), row("2", "a.igc", "b.igc"), row("3", "three.gpx")];
    const labels = [line("week 1/one.gpx", "Bo", "school one"), line("b.igc", "Al"), line("gone.gpx", "Al")];
    const named = namedFlights(rows, labels);
    expect([...named.labels].map(([id, { pilot }]) => [id, pilot])).toEqual([
      ["1", "Bo"],
      ["2", "Al"],
    ]);
    expect(named).toMatchObject({ unknown: ["gone.gpx"], unclear: [] });
    expect(namingWords("flights.csv", named)).toEqual([
      "flights.csv: pilot and aircraft written on 2 flights of the logbook.",
      "It names 1 of no flight in the logbook: gone.gpx.",
    ]);
  });

  it("of one name in two folders: the same people are no doubt, others are left", () => {
    const rows = [row("1", "log.gpx"), row("2", "same.gpx")];
    const labels = [
      ...[line("a/log.gpx", "Bo"), line("b/log.gpx", "Al")],
      ...[line("a/same.gpx", "Bo"), line("b/same.gpx", "Bo")],
    ];
    const named = namedFlights(rows, labels);
    expect([...named.labels.keys()]).toEqual(["2"]);
    expect(named).toMatchObject({ unknown: [], unclear: ["log.gpx"] });
    expect(namingWords("flights.csv", named).join(" ")).toContain("left as they are: log.gpx");
  });

  it("names few of many, and says that there is none", () => {
    const labels = ["a", "b", "c", "d", "e"].map((name) => line(name, "Bo"));
    expect(namingWords("flights.csv", namedFlights([], labels))).toEqual([
      "flights.csv: pilot and aircraft written on no flight of the logbook.",
      "It names 5 of no flight in the logbook: a, b, c and 2 more.",
    ]);
  });

  it("says that capitals do not matter, and which names stand in it twice", () => {
    const rows = [row("1", "One.gpx"), row("2", "two.gpx")];
    const labels = [line("one.GPX", "Bo"), line("two.gpx", "Al"), line("two.gpx", "Al")];
    const named = namedFlights(rows, labels);
    expect([...named.labels.keys()]).toEqual(["1", "2"]);
    expect(namingWords("flights.csv", named).slice(1)).toEqual([
      "Capitals do not matter in its names of files: One.gpx.",
      "In more than one of its lines, which say the same: two.gpx.",
    ]);
  });

  it("without a column of files it names what it lacks and what it has", async () => {
    const text = "log,pilot\none.gpx,Bo\n";
    expect((await tablesApart([new File([text], "flights.csv")])).tables).toHaveLength(1);
    expect(lackingWords("flights.csv", readLabelTable(text))).toMatch(
      /^flights\.csv: no column “file” stands in its first line \(log, pilot\)/,
    );
  });

  it("is told from the logs that it is given with", async () => {
    const table = new File(["file,pilot\none.gpx,Bo\n"], "flights.csv");
    const log = new File(["time,lat,lon\n1,2,3\n"], "log.csv");
    expect(await tablesApart([log, table])).toEqual({ files: [log], tables: [table] });
  });
});
