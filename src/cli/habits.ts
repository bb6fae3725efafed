/** `hindtrack habits FOLDER`: what keeps coming back over all the flights of a folder, worked out on all cores. */
import { createHash } from "node:crypto";
import { availableParallelism } from "node:os";
import { join, resolve } from "node:path";
import { Command, InvalidArgumentError } from "commander";
import { CAUTION, chooseFlights, flightsByPilot, habitsOf, habitsText } from "../index.ts";
import type { FlightTask, Settings } from "./documents-of.ts";
import { LABELS, readLabels } from "./flight-labels.ts";
import { type FolderFlight, flightsIn } from "./folder.ts";
import { FolderResults } from "./folder-results.ts";
import { inOrder } from "./on-all-cores.ts";
import { openBytes, openPoints, openStandard } from "./open-beside.ts";
import { complainOf, note, sayAll } from "./output.ts";
import { folderProgress } from "./progress.ts";
import { readyToWrite } from "./ready-to-write.ts";
import { writeWhole } from "./write-whole.ts";

interface Options {
  readonly out?: string;
  readonly pilot?: string;
  readonly aircraft?: string;
  readonly from?: string;
  readonly to?: string;
  readonly labels?: string;
  readonly points?: readonly string[];
  readonly standard?: string;
  readonly jobs: number;
  readonly json?: boolean;
}

function wholeDay(text: string): string {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(`${text}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(time)) throw new InvalidArgumentError("a day is written as in 2026-10-17.");
  return new Date(time).toISOString();
}

const dayAfter = (text: string): string => new Date(Date.parse(wholeDay(text)) + 86_400_000).toISOString();

function jobs(text: string): number {
  if (!/^[1-9]\d{0,2}$/.test(text)) throw new InvalidArgumentError("count from 1.");
  return Number(text);
}

/** Opens what all flights are held against, so that what is wrong with it is said at once and only once. */
async function settingsOf({ points = [], standard }: Options): Promise<Settings> {
  await openPoints(points);
  const held = standard === undefined ? "" : await openStandard(standard);
  const hash = createHash("sha256").update(JSON.stringify(held));
  for (const path of points) hash.update(await openBytes(path));
  return { points, standard: standard ?? null, key: hash.digest("hex") };
}

async function run(folder: string, options: Options): Promise<void> {
  const { out = null } = options;
  const settings = await settingsOf(options);
  const lists = new Set((options.points ?? []).map((path) => resolve(path)));
  const found = await flightsIn(folder, out);
  const flights = found.flights.filter(({ path }) => !lists.has(resolve(path)));
  sayAll(found.notes, note);
  const table = options.labels ?? join(folder, LABELS);
  const names = flights.map(({ name }) => name);
  const labels = await readLabels(table, options.labels !== undefined, names);
  sayAll(labels.notes, note);
  const tasks = flights.map((flight: FolderFlight): FlightTask => {
    const known = labels.byFile.get(flight.name) ?? { pilot: null, aircraft: null };
    return { flight, ...known, out, settings };
  });
  if (tasks.length === 0) {
    for (const line of found.unreadable) complainOf(line);
    complainOf(`${folder}: no track logs or debriefs in it; logs are GPX, KML, KMZ, FAI IGC or CSV`);
    process.exitCode = 1;
    return;
  }
  if (out) await readyToWrite(out);
  const results = new FolderResults(out);
  const { observed } = results;
  const progress = folderProgress(tasks.length);
  await inOrder(tasks, options.jobs, async (result, task) => {
    await results.take(result, task);
    const { taken, reused, bad } = results;
    progress.say({ done: taken - bad, reused, bad });
  });
  progress.end();
  await results.end();

  const { pilot = null, aircraft = null, from = null, to = null } = options;
  const chosen = chooseFlights(observed, { pilot, aircraft, from, to });
  if (chosen.length < observed.length) note(`${chosen.length} of ${observed.length} flights chosen`);
  const report = habitsOf(chosen);
  const text = habitsText(report, flightsByPilot(chosen).map(habitsOf));
  const json = `${JSON.stringify({ format: "hindtrack-habits", version: 1, caution: CAUTION, ...report }, null, 2)}\n`;
  if (out) {
    for (const [name, content] of [
      ["habits.txt", text],
      ["habits.json", json],
    ] as const) {
      await writeWhole(join(out, name), content);
      note(`wrote ${join(out, name)}`);
    }
  }
  process.stdout.write(options.json ? json : text);
  results.complain(found.unreadable);
  if (results.bad + results.broken.length + found.unreadable.length > 0 || observed.length === 0)
    process.exitCode = 1;
}

export function habitsCommand(): Command {
  return new Command("habits")
    .summary("tell what keeps coming back over many flights")
    .description(
      `Reads every track log in a folder and in those within it, with the brief beside it (the same name with .yaml, .yml or
.json, else brief.yaml for the whole folder), and every debrief document; tells habits and what to practise next.
Files that cannot be used are left out and named at the end; then the exit code is 1, though the rest was done.`,
    )
    .argument("<folder>", "where the flights are")
    .option(
      "--out <folder>",
      "keep the debriefs there, so that the next run only does what is new; with the exercises as one table and the habits as text and JSON",
    )
    .option("--pilot <name>", `only flights of this pilot, as ${LABELS} names them`)
    .option("--aircraft <name>", "only flights in this aircraft, likewise")
    .option("--from <day>", "only flights from this day on, as in 2026-10-17 (UTC)", wholeDay)
    .option("--to <day>", "only flights up to this day", dayAfter)
    .option(
      "--labels <file>",
      `a table with the columns file, pilot, aircraft; ${LABELS} in the folder if not given; capitals do not matter in the names of files, folders only where two files are of one name`,
    )
    .option(
      "--points <file>",
      "fixes and runways that briefs may name, as for debrief; may be given again",
      (path: string, before: readonly string[] = []) => [...before, path],
    )
    .option(
      "--standard <name or file>",
      "what to hold all flights against, as for debrief; what each brief names if not given",
    )
    .option("--jobs <number>", "how many cores to use", jobs, availableParallelism())
    .option("--json", "the habits as JSON")
    .action(run);
}
