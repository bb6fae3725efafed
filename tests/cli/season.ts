/** A season of lessons in a folder, and the built program that a test starts on it as a user does. */
import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import { afterAll, beforeAll } from "vitest";
import { gpxText } from "../../src/simulator/gpx.ts";
import { fly, pilotLesson } from "../../src/simulator/index.ts";

const ROOT = join(import.meta.dirname, "../..");
export const scratch = mkdtempSync(join(tmpdir(), "hindtrack-habits-"));
export const program = join(scratch, "cli", "hindtrack.js");
export const season = join(scratch, "season");
export const LESSONS = 6;

export function habits(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, "habits", ...args], {
    encoding: "utf8",
    cwd: scratch,
  });
  return { status, stdout, stderr };
}

export const made = (out: string): string[] =>
  existsSync(out) ? readdirSync(out).filter((name) => name.endsWith(".debrief.json")) : [];
export const stems = (names: readonly string[]): string[] => names.map((name) => name.split(".")[0] ?? "");

export const lesson = (day: number): string => `lesson-${day}`;
/** The debriefs of the whole season, and what was said of it. */
export const seasonOut = join(scratch, "season-out");
export let whole: ReturnType<typeof habits>;

/** Builds the program, flies the season and debriefs it, before the tests of a file. */
export function flySeason(): void {
  beforeAll(async () => {
    await build({
      configFile: join(ROOT, "src/cli/vite.config.ts"),
      logLevel: "error",
      build: { outDir: join(scratch, "cli"), emptyOutDir: true },
    });
    // packages are found from where the program lies
    symlinkSync(join(ROOT, "node_modules"), join(scratch, "node_modules"), "dir");
    mkdirSync(season);
    for (let day = 1; day <= LESSONS; day++) {
      const scenario = pilotLesson("descends-late", day, "right");
      writeFileSync(join(season, `${lesson(day)}.gpx`), gpxText(fly(scenario, day).track, 5));
      writeFileSync(join(season, `${lesson(day)}.yaml`), scenario.brief ?? "");
    }
    whole = habits(season, "--out", seasonOut);
  }, 180_000);
  afterAll(() => rmSync(scratch, { recursive: true, force: true }));
}

let times = 0;
export const newFolder = (): string => {
  const folder = join(scratch, `folder-${++times}`);
  mkdirSync(folder);
  return folder;
};

/** A folder of its own with some of the lessons as logs with their briefs. */
export function logs(...days: readonly number[]): string {
  const folder = newFolder();
  for (const day of days)
    for (const ending of ["gpx", "yaml"])
      copyFileSync(join(season, `${lesson(day)}.${ending}`), join(folder, `${lesson(day)}.${ending}`));
  return folder;
}

/** The debriefs of some of the lessons, as they were made, in a folder. */
export function debriefs(folder: string, ...days: readonly number[]): string {
  mkdirSync(folder, { recursive: true });
  for (const name of made(seasonOut))
    if (days.some((day) => name.startsWith(`${lesson(day)}.`)))
      copyFileSync(join(seasonOut, name), join(folder, name));
  return folder;
}
