/** `hindtrack habits` in trouble: changed, damaged, doubled and unusable files, wrong calls, ended in the middle. */
import { spawn, spawnSync } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { csvParse } from "d3-dsv";
import { describe, expect, it } from "vitest";
import { documentSchema } from "../../src/debrief/document.ts";
import {
  debriefs,
  habits,
  habitsOnAllCores,
  logs,
  made,
  newFolder,
  program,
  stems,
  tidyUp,
} from "./season.ts";

tidyUp();

// each starts the program several times, on a machine that may have other things to do
describe("hindtrack habits in trouble", { timeout: 180_000 }, () => {
  it("makes again only what is new, changed or damaged, and leaves no older debrief behind", () => {
    const folder = logs(1, 2, 3, 4);
    const out = debriefs(join(folder, "out"), 1, 2, 3);
    const before = new Map(made(out).map((name) => [name, statSync(join(out, name)).mtimeMs]));
    const brief = readFileSync(join(folder, "lesson-2.yaml"), "utf8");
    writeFileSync(join(folder, "lesson-2.yaml"), brief.replace("Two courses", "Again two courses"));
    const torn = join(out, made(out).find((name) => name.startsWith("lesson-3."))!);
    writeFileSync(torn, readFileSync(torn, "utf8").slice(0, 900));
    expect(habitsOnAllCores(folder, "--out", out).status).toBe(0);
    expect(stems(made(out))).toEqual(["lesson-1", "lesson-2", "lesson-3", "lesson-4"]);
    const kept = made(out).filter((name) => statSync(join(out, name)).mtimeMs === before.get(name));
    expect(stems(kept)).toEqual(["lesson-1"]);
    documentSchema.parse(JSON.parse(readFileSync(torn, "utf8")));
  });

  it("a flight that lies there as a log and as a document counts once", () => {
    const folder = logs(1, 2);
    const out = debriefs(join(folder, "out"), 1, 2);
    const [document] = made(out);
    copyFileSync(join(out, document!), join(folder, "a-lesson.debrief.json"));
    const { status, stdout, stderr } = habits(folder, "--out", out);
    expect(status).toBe(0);
    expect(stdout).toContain("2 flights, ");
    expect(stderr).toMatch(/a-lesson\.debrief\.json: the same flight as lesson-1\.gpx; counted once/);
    const rows = csvParse(readFileSync(join(out, "exercises.csv"), "utf8"));
    expect([...new Set(rows.map((row) => row.flight))]).toEqual(["lesson-1.gpx", "lesson-2.gpx"]);
  });

  it("keeps debriefs beside their logs as well: a changed brief counts at once, and the older debrief is gone", () => {
    const folder = debriefs(logs(1, 2), 1, 2);
    const brief = readFileSync(join(folder, "lesson-2.yaml"), "utf8");
    writeFileSync(join(folder, "lesson-2.yaml"), brief.replace("Two courses", "Again two courses"));
    const { status, stdout, stderr } = habits(folder, "--out", folder);
    expect(status).toBe(0);
    expect(stdout).toContain("2 flights, ");
    expect(stderr).not.toContain("counted once");
    expect(made(folder)).toHaveLength(2);
    expect(readFileSync(join(folder, made(folder)[1]!), "utf8")).toContain("Again two courses");
  });

  it("says which brief it took, that a log breaks off, and how many files it could not use", () => {
    const folder = logs(1, 2);
    copyFileSync(join(folder, "lesson-1.yaml"), join(folder, "lesson-1.yml"));
    const log = readFileSync(join(folder, "lesson-2.gpx"), "utf8");
    writeFileSync(join(folder, "lesson-2.gpx"), log.slice(0, log.length / 2));
    writeFileSync(join(folder, "empty.gpx"), "");
    const { status, stderr } = habits(folder);
    expect(status).toBe(1);
    expect(stderr).toContain("lesson-1.gpx: its brief is lesson-1.yaml; lesson-1.yml was not used");
    expect(stderr).toMatch(/lesson-2\.gpx, line \d+.*the file breaks off/);
    expect(stderr).toMatch(/1 of 3 could not be used; the rest was done[\s\S]*empty\.gpx.*the file is empty/);
  });

  it("clears away what a killed run left half written, and nothing of a run that goes on", () => {
    const folder = logs(1);
    const out = join(folder, "out");
    mkdirSync(out);
    const ended = spawnSync(process.execPath, ["-e", ""]).pid;
    for (const pid of [ended, process.pid]) writeFileSync(join(out, `.exercises.csv.${pid}.part`), "");
    expect(habits(folder, "--out", out).status).toBe(0);
    expect(readdirSync(out).filter((name) => name.endsWith(".part"))).toEqual([
      `.exercises.csv.${process.pid}.part`,
    ]);
  });

  it("leaves alone what others left half written", () => {
    const folder = logs(1);
    const out = join(folder, "out");
    mkdirSync(join(out, "more"), { recursive: true });
    const ended = spawnSync(process.execPath, ["-e", ""]).pid;
    const strange = join(out, "more", `.holiday.mov.${ended}.part`);
    writeFileSync(strange, "");
    expect(habits(folder, "--out", out).status).toBe(0);
    expect(existsSync(strange)).toBe(true);
  });

  it("is not stopped by bad files: they are named at the end, and the exit code is 1", () => {
    const folder = debriefs(logs(5), 1, 2, 3, 4);
    writeFileSync(join(folder, "bad.gpx"), "no log at all");
    writeFileSync(join(folder, "torn.debrief.json"), '{ "format": "hindtrack-debrief", "version": 1');
    writeFileSync(join(folder, "lesson-5.yaml"), "brief: 1\nexercises:\n  - { corse: 12 }\n");
    const { status, stdout, stderr } = habitsOnAllCores(folder);
    expect(status).toBe(1);
    expect(stdout).toContain("4 flights, ");
    expect(stderr).toMatch(/bad\.gpx.*not a track log/);
    expect(stderr).toMatch(/torn\.debrief\.json.*cut off or damaged/);
    expect(stderr).toMatch(/lesson-5\.yaml, line 3.*no exercise that is known/);
    expect(stderr).not.toMatch(/ at .*\.js:\d+/);
  });

  it.each([
    [
      "a folder that is not there",
      ["/no/such/folder"],
      1,
      /no\/such\/folder: cannot read it: there is no such file/,
    ],
    ["a day that is none", [".", "--from", "17.10.2026"], 2, /a day is written as in 2026-10-17/],
    ["no cores", [".", "--jobs", "0"], 2, /count from 1/],
    ["labels that are not there", [".", "--labels", "none.csv"], 1, /none\.csv: cannot read it/],
    ["nothing to look at", ["."], 1, /no track logs or debriefs in it/],
  ])("complains in plain words: %s", (_, args, code, words) => {
    const folder = newFolder();
    const { status, stdout, stderr } = habits(...args.map((a) => (a === "." ? folder : a)));
    expect({ status, stdout }).toEqual({ status: code, stdout: "" });
    expect(stderr).toMatch(words);
  });

  it("ended in the middle by the system, it loses nothing that was finished", async () => {
    const folder = logs(1, 2, 3);
    const out = join(folder, "out");
    const child = spawn(process.execPath, [program, "habits", folder, "--out", out, "--jobs", "1"], {
      stdio: "ignore",
    });
    const ended = new Promise((resolve) => child.once("exit", resolve));
    for (let waits = 0; made(out).length < 1 && waits < 1000; waits++)
      await new Promise((resolve) => setTimeout(resolve, 30));
    child.kill("SIGKILL");
    await ended;
    const finished = made(out);
    expect(finished.length).toBeGreaterThanOrEqual(1);
    const before = finished.map((name) => statSync(join(out, name)).mtimeMs);
    for (const name of finished) documentSchema.parse(JSON.parse(readFileSync(join(out, name), "utf8")));
    expect(habits(folder, "--out", out).status).toBe(0);
    expect(finished.map((name) => statSync(join(out, name)).mtimeMs)).toEqual(before);
    expect(made(out)).toHaveLength(3);
  });
});
