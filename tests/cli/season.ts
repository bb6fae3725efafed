/** A season of lessons in folders of a test's own, and the habits that the built program tells of them. */
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, inject } from "vitest";
import { type Ended, run } from "./run.ts";

export const program = inject("program");
export const season = inject("season");
export const LESSONS = inject("lessons");
export const seasonOut = inject("seasonOut");
/** What was said of the whole season. */
export const whole = inject("seasonSaid");
if (!program) throw new Error("nothing was built: run it with -c tests/vitest.config.ts");

const scratch = mkdtempSync(join(tmpdir(), "hindtrack-habits-"));

/** To be called in each file: what its tests wrote goes with them. */
export const tidyUp = (): void => afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** On one core: the season itself was made on all of them, and a thread more starts as slowly as a program. */
export const habits = (...args: string[]): Ended => run(program, scratch, ["habits", "--jobs", "1", ...args]);
export const habitsOnAllCores = (...args: string[]): Ended => run(program, scratch, ["habits", ...args]);

export const made = (out: string): string[] =>
  existsSync(out) ? readdirSync(out).filter((name) => name.endsWith(".debrief.json")) : [];
export const stems = (names: readonly string[]): string[] => names.map((name) => name.split(".")[0] ?? "");

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
    for (const name of [`lesson-${day}.gpx`, `lesson-${day}.yaml`])
      copyFileSync(join(season, name), join(folder, name));
  return folder;
}

/** The debriefs of some of the lessons, as they were made, in a folder. */
export function debriefs(folder: string, ...days: readonly number[]): string {
  mkdirSync(folder, { recursive: true });
  for (const name of made(seasonOut))
    if (days.some((day) => name.startsWith(`lesson-${day}.`)))
      copyFileSync(join(seasonOut, name), join(folder, name));
  return folder;
}
