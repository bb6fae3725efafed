/** `hindtrack habits` as a user calls it: built, started as a process on a folder. */
import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { csvParse } from "d3-dsv";
import { zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { documentSchema } from "../../src/debrief/document.ts";
import {
  debriefs,
  habits,
  LESSONS,
  logs,
  made,
  newFolder,
  season,
  seasonOut,
  tidyUp,
  whole,
} from "./season.ts";

tidyUp();

// each starts the program several times, on a machine that may have other things to do
describe("hindtrack habits", { timeout: 180_000 }, () => {
  it("tells the habit of a folder, says what to practise, and carries the caution", () => {
    const { status, stdout, stderr } = whole;
    expect(status).toBe(0);
    expect(stderr).not.toMatch(/hindtrack:/);
    expect(stdout).toMatch(/1\. Descents are begun \d+ seconds too late/);
    expect(stdout).toContain("Practise: before each descent");
    expect(stdout).toMatch(/Not for\s+navigation/);
  });

  it("writes nothing where no folder is named for it", () => {
    const folder = logs(1);
    expect(habits(folder)).toMatchObject({ status: 0, stderr: "" });
    expect(readdirSync(folder)).toEqual(["lesson-1.gpx", "lesson-1.yaml"]);
  });

  it("writes documents that keep the contract, one table, the habits as text and JSON; and nothing half", () => {
    for (const name of made(seasonOut)) {
      documentSchema.parse(JSON.parse(readFileSync(join(seasonOut, name), "utf8")));
    }
    expect(made(seasonOut)).toHaveLength(LESSONS);
    const rows = csvParse(readFileSync(join(seasonOut, "exercises.csv"), "utf8"));
    expect(new Set(rows.map((row) => row.flight)).size).toBe(LESSONS);
    expect(rows.filter((row) => row.kind === "descent")).toHaveLength(LESSONS);
    expect(readFileSync(join(seasonOut, "habits.txt"), "utf8")).toBe(whole.stdout);
    const json = JSON.parse(readFileSync(join(seasonOut, "habits.json"), "utf8"));
    expect(json).toMatchObject({ format: "hindtrack-habits", version: 1 });
    expect(json.flights).toHaveLength(LESSONS);
    expect(json.caution).toMatch(/Training aid/);
    expect(readdirSync(seasonOut).filter((name) => name.endsWith(".part"))).toEqual([]);
  });

  it("finds the brief beside a log: of its own name, else the folder's; and looks into folders", () => {
    const folder = logs(1);
    mkdirSync(join(folder, "more"));
    copyFileSync(join(season, "lesson-3.gpx"), join(folder, "more", "log.gpx"));
    copyFileSync(join(season, "lesson-3.yaml"), join(folder, "more", "brief.yaml"));
    const out = join(folder, "out");
    expect(habits(folder, "--out", out).status).toBe(0);
    const rows = csvParse(readFileSync(join(out, "exercises.csv"), "utf8"));
    expect([...new Set(rows.map((row) => row.flight))]).toEqual(["lesson-1.gpx", "more/log.gpx"]);
    for (const row of rows) if (row.kind !== "hold") expect(row.source).toBe("brief");
    expect(made(join(out, "more"))).toHaveLength(1);
  });

  it("says the same of debriefs as of the logs that they were made from", () => {
    expect(habits(seasonOut).stdout).toBe(whole.stdout);
  });

  it("chooses by pilot, aircraft and period, as flights.csv names them", () => {
    const folder = debriefs(newFolder(), 1, 2, 3, 4);
    const rows = made(folder).map(
      (name, i) => `${name},${i < 3 ? "Pilot one" : "Pilot two"},School aircraft`,
    );
    writeFileSync(join(folder, "flights.csv"), ["file,pilot,aircraft", ...rows].join("\n"));
    expect(habits(folder, "--pilot", "Pilot one").stdout).toContain(
      "3 flights of Pilot one in School aircraft, ",
    );
    const all = habits(folder).stdout;
    expect(all).toMatch(/Pilot by pilot.*\n {3}Pilot one, 3 flights: .*(\n.*)*\n {3}Pilot two, 1 flight: /);
    const early = habits(folder, "--aircraft", "School aircraft", "--to", "2026-03-03");
    expect(early.stdout).toContain("2 flights of Pilot one in School aircraft, ");
    const nobodys = habits(folder, "--from", "2026-03-05", "--pilot", "Pilot one");
    expect(nobodys.stdout).toContain("0 flights, 0 exercises.");
  });

  it("counts every flight of a file that holds several, keeps a debrief of each, and makes none of them twice", () => {
    const folder = logs(1, 2);
    const packed = zipSync(
      Object.fromEntries(["lesson-1.gpx", "lesson-2.gpx"].map((n) => [n, readFileSync(join(folder, n))])),
    );
    for (const name of readdirSync(folder)) rmSync(join(folder, name));
    writeFileSync(join(folder, "both.kmz"), packed);
    const out = join(folder, "out");
    const first = habits(folder, "--out", out);
    expect(first).toMatchObject({ status: 0 });
    expect(first.stdout).toContain("2 flights, ");
    expect(made(out).map((name) => name.replace(/[0-9a-f]{12}/, "KEY"))).toEqual(
      expect.arrayContaining(["both.KEY.debrief.json", expect.stringMatching(/^both\.flight-[12]\.KEY/)]),
    );
    const rows = csvParse(readFileSync(join(out, "exercises.csv"), "utf8"));
    expect(new Set(rows.map((row) => row.flight))).toEqual(
      new Set(["both.kmz, flight 1", "both.kmz, flight 2"]),
    );
    const before = made(out).map((name) => statSync(join(out, name)).mtimeMs);
    expect(habits(folder, "--out", out).stdout).toBe(first.stdout);
    expect(made(out).map((name) => statSync(join(out, name)).mtimeMs)).toEqual(before);
  });
});
