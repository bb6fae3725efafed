/** `hindtrack habits` on what really lies in people's folders: flights that look alike, damaged debriefs, names said in several places. */
import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { csvParse } from "d3-dsv";
import { describe, expect, it } from "vitest";
import { documentSchema } from "../../src/debrief/document.ts";
import { debriefs, habits, logs, made, tidyUp } from "./season.ts";

tidyUp();

/** A debrief as the page saves it, with who flew. */
function withFlownBy(path: string, pilot: string, aircraft: string): void {
  const document = JSON.parse(readFileSync(path, "utf8"));
  writeFileSync(path, JSON.stringify({ ...document, flownBy: { pilot, aircraft } }));
}

/** The same flight, second by second, somewhat to the east: same times, same number of points, same length. */
function elsewhere(folder: string, name: string, degrees: number): string {
  const log = readFileSync(join(folder, name), "utf8");
  return log.replace(/lon="([-\d.]+)"/g, (_, lon) => `lon="${Number(lon) + degrees}"`);
}

// each starts the program several times, on a machine that may have other things to do
describe("flights that look alike", { timeout: 180_000 }, () => {
  it("another aircraft with the same start, end and number of points is another flight", () => {
    const folder = logs(1, 2);
    writeFileSync(join(folder, "other.gpx"), elsewhere(folder, "lesson-1.gpx", 0.05));
    copyFileSync(join(folder, "lesson-2.gpx"), join(folder, "copy.gpx"));
    const { status, stdout, stderr } = habits(folder);
    expect(status).toBe(0);
    expect(stdout).toContain("3 flights, ");
    expect(stderr).not.toMatch(/other\.gpx|lesson-1\.gpx/);
    expect(stderr).toContain("lesson-2.gpx: the same flight as copy.gpx; counted once");
  });

  it("one track that is named as two pilots' counts for each, and that is said", () => {
    const folder = logs(1);
    copyFileSync(join(folder, "lesson-1.gpx"), join(folder, "copy.gpx"));
    copyFileSync(join(folder, "lesson-1.yaml"), join(folder, "copy.yaml"));
    writeFileSync(join(folder, "flights.csv"), "file,pilot\nlesson-1.gpx,Bo\ncopy.gpx,Al\n");
    const { stdout, stderr } = habits(folder);
    expect(stdout).toContain("2 flights of 2 pilots together");
    expect(stderr).toContain(
      "lesson-1.gpx: the same track as copy.gpx, with another pilot or aircraft: each counts",
    );
  });
});

describe("who flew, as the debriefs say", { timeout: 180_000 }, () => {
  it("counts where flights.csv does not name the file, in the table too", () => {
    const folder = debriefs(logs(3), 1, 2, 3);
    const [one, two, three] = made(folder);
    copyFileSync(join(folder, three!), join(folder, "lesson-3.debrief.json"));
    withFlownBy(join(folder, one!), "Bo", "school one");
    withFlownBy(join(folder, two!), "Bo", "school one");
    withFlownBy(join(folder, "lesson-3.debrief.json"), "Cy", "school two");
    writeFileSync(join(folder, "flights.csv"), `file,pilot,aircraft\n${two},Al,\n`);
    const out = join(folder, "out");
    const { status, stdout, stderr } = habits(folder, "--out", out);
    expect(status).toBe(0);
    expect(stdout).toContain("3 flights of 3 pilots together");
    expect(stderr).toContain("lesson-3.debrief.json: the same flight as lesson-3.gpx; counted once");
    const rows = csvParse(readFileSync(join(out, "exercises.csv"), "utf8"));
    const flown = new Set(rows.map(({ flight, pilot, aircraft }) => [flight, pilot, aircraft].join(" ")));
    expect([...flown].sort()).toEqual(
      [`${one} Bo school one`, `${two} Al school one`, "lesson-3.gpx Cy school two"].sort(),
    );
  });
});

describe("damaged debriefs", { timeout: 180_000 }, () => {
  it("are named at the end, each with what became of its flight; the exit code is 1", () => {
    const folder = logs(1, 2);
    const [cut, words] = ["this debrief is cut off or damaged", "was worked out anew"];
    const format = '{ "format": "hindtrack-debrief", "version": 1, "log": {';
    writeFileSync(join(folder, "lesson-1.debrief.json"), "");
    writeFileSync(join(folder, "lesson-2.debrief.json"), format);
    writeFileSync(join(folder, "gone.debrief.json"), "\u0000\u0001");
    writeFileSync(join(folder, "none.debrief.json"), "{}");
    const { status, stdout, stderr } = habits(folder);
    expect(status).toBe(1);
    expect(stdout).toContain("2 flights, ");
    for (const line of [
      `lesson-1.debrief.json: ${cut}; its log lesson-1.gpx ${words}.`,
      `lesson-2.debrief.json: ${cut}; its log lesson-2.gpx ${words}.`,
      `gone.debrief.json: ${cut}; make it again from its log.`,
      "none.debrief.json: it is called a debrief and holds none; make it again from its log.",
    ])
      expect(stderr).toContain(line);
  });

  it("what a run kept beside its logs is looked at too, and mended where results go there", () => {
    const folder = debriefs(logs(1, 2), 1, 2);
    const torn = join(folder, made(folder).find((name) => name.startsWith("lesson-2."))!);
    writeFileSync(torn, readFileSync(torn, "utf8").slice(0, 5000));
    const first = habits(folder);
    expect(first.status).toBe(1);
    expect(first.stdout).toContain("2 flights, ");
    expect(first.stderr).toContain(
      `${torn}: this debrief is damaged; its log lesson-2.gpx was worked out anew`,
    );
    const second = habits(folder, "--out", folder);
    expect(second.status).toBe(0);
    expect(second.stderr).toContain(`${torn}: was damaged, and was made again from its log`);
    documentSchema.parse(JSON.parse(readFileSync(torn, "utf8")));
  });
});

describe("a table of who flew what", { timeout: 180_000 }, () => {
  it("without the column file is refused by that column's name", () => {
    const folder = logs(1);
    writeFileSync(join(folder, "flights.csv"), "Log,Pilot\nlesson-1.gpx,Bo\n");
    const { status, stderr } = habits(folder);
    expect(status).toBe(1);
    expect(stderr).toMatch(/flights\.csv.*no column “file” stands in its first line: “Log”, “Pilot”/);
  });

  it("finds files whatever their capitals, and says that, what stands twice and what nobody has", () => {
    const folder = logs(1, 2);
    const rows = ["LESSON-1.gpx,Bo", "lesson-2.gpx,Bo", "lesson-2.gpx,Al", "gone.gpx,Al"];
    writeFileSync(join(folder, "flights.csv"), ["file,pilot", ...rows].join("\n"));
    const { status, stdout, stderr } = habits(folder);
    expect(status).toBe(0);
    expect(stdout).toContain("Of Bo, and 1 flight of nobody named");
    expect(stderr).toContain(
      "capitals do not matter in the names of files; taken were LESSON-1.gpx for lesson-1.gpx",
    );
    expect(stderr).toMatch(/names nobody for lesson-2\.gpx/);
    expect(stderr).toContain("of no flight in the folder: gone.gpx");
  });
});
