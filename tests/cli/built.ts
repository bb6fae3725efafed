/** Builds the terminal's program once for all tests of it, and debriefs a season of lessons with it as a user does. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import type { TestProject } from "vitest/node";
import { gpxText } from "../../src/simulator/gpx.ts";
import { fly, pilotLesson } from "../../src/simulator/index.ts";
import { type Ended, run } from "./run.ts";

const ROOT = join(import.meta.dirname, "../..");
const LESSONS = 6;
/** Seconds between the points of a log: fewer points are sooner read, and the season still shows its habit. */
const EVERY = 2;

declare module "vitest" {
  export interface ProvidedContext {
    /** The built program, in a folder that goes when the tests have run. */
    program: string;
    /** The folder of the season: logs, each with its brief. Nothing is written there. */
    season: string;
    lessons: number;
    /** The debriefs of the whole season, made on all cores. */
    seasonOut: string;
    /** What was said while they were made. */
    seasonSaid: Ended;
  }
}

export default async function setup(project: TestProject): Promise<() => void> {
  const scratch = mkdtempSync(join(tmpdir(), "hindtrack-terminal-"));
  const [program, season, seasonOut] = ["cli/hindtrack.js", "season", "season-out"].map((name) =>
    join(scratch, name),
  ) as [string, string, string];
  await build({
    configFile: join(ROOT, "src/cli/vite.config.ts"),
    logLevel: "error",
    build: { outDir: join(scratch, "cli"), emptyOutDir: true },
  });
  // packages are found from where the program lies
  symlinkSync(join(ROOT, "node_modules"), join(scratch, "node_modules"), "dir");
  mkdirSync(season);
  for (let day = 1; day <= LESSONS; day++) {
    const scenario = { ...pilotLesson("descends-late", day, "right"), logging: { every: EVERY } };
    writeFileSync(join(season, `lesson-${day}.gpx`), gpxText(fly(scenario, day).track, 5));
    writeFileSync(join(season, `lesson-${day}.yaml`), scenario.brief ?? "");
  }
  project.provide("program", program);
  project.provide("season", season);
  project.provide("lessons", LESSONS);
  project.provide("seasonOut", seasonOut);
  project.provide("seasonSaid", run(program, scratch, ["habits", season, "--out", seasonOut]));
  return () => rmSync(scratch, { recursive: true, force: true });
}
