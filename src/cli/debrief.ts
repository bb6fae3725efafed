/** `hindtrack debrief LOG...`: a track log and perhaps a brief become a debrief, as text, JSON, CSV or GeoJSON. */
import { readFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { Command, InvalidArgumentError } from "commander";
import {
  approachesCsv,
  type BriefDraft,
  briefFromRoute,
  type Debrief,
  debriefFlight,
  debriefGeoJson,
  debriefText,
  exercisesCsv,
  fileStem,
  type ImportedLog,
  issueSentence,
  joinLogs,
  joinPointLists,
  type KnownPoints,
  lapsCsv,
  legsCsv,
  oneFileHtml,
  type PointList,
  type Position,
  pointsCsv,
  readBrief,
  readPlaces,
  readPoints,
  readStandard,
  TEST_STANDARDS,
  type TestStandard,
  UnusableInput,
  verdictsCsv,
} from "../index.ts";
import { type Columns, columnOption } from "./column-option.ts";
import { openLog } from "./open-log.ts";
import { note, UnusableFile, writeInto } from "./output.ts";

interface Options {
  readonly brief?: string;
  readonly points?: readonly string[];
  readonly standard?: string;
  readonly out?: string;
  readonly json?: boolean;
  readonly csv?: boolean;
  readonly geojson?: boolean;
  readonly html?: boolean;
  readonly join?: boolean;
  readonly flight?: number;
  readonly column?: Columns;
}

async function openBytes(path: string): Promise<Buffer> {
  try {
    return await readFile(path);
  } catch (error) {
    throw new UnusableFile(path, "read", error as NodeJS.ErrnoException);
  }
}

/** A published standard by its name, else a school's own file. */
async function openStandard(name: string): Promise<TestStandard | "none"> {
  if (name === "none") return name;
  const published = TEST_STANDARDS.find(({ id }) => id === name);
  return published ?? readStandard((await openBytes(name)).toString("utf8"), name);
}

/** A brief of our own, or the first route of a GPX file. */
async function openBrief(path: string, known: KnownPoints | null): Promise<BriefDraft> {
  const bytes = await openBytes(path);
  const text = bytes.toString("utf8");
  if (!/^\s*</.test(text)) return readBrief(text, path, known);
  const { routes } = await readPlaces([bytes], path);
  const [route, ...others] = routes;
  if (!route) {
    throw new UnusableInput([{ code: "no-route", severity: "error", where: { file: path }, facts: {} }]);
  }
  if (others.length > 0) note(`${path}: its first route, ${route.name || "without a name"}, is the brief`);
  return briefFromRoute(route, path);
}

/** The user's point lists as one; what of them could not be used is said. Null where none is given. */
async function openPoints(paths: readonly string[]): Promise<PointList | null> {
  if (paths.length === 0) return null;
  const lists = await inTurn(paths, async (path) => readPoints([await openBytes(path)], path));
  for (const issue of lists.flatMap(({ issues }) => issues))
    if (issue.severity !== "note") note(issueSentence(issue));
  return joinPointLists(lists);
}

/** Of several points of one ident the one nearest to the middle of the log is meant. */
function nearMiddle({ track }: ImportedLog): Position {
  const middle = track.length >> 1;
  return { latitude: track.latitude[middle]!, longitude: track.longitude[middle]! };
}

/** Which of several, counted from 1 as a person does; the analysis counts from 0. */
function counting(text: string): number {
  if (!/^[1-9]\d{0,5}$/.test(text)) throw new InvalidArgumentError("count from 1.");
  return Number(text) - 1;
}

/** One after the other, so that no two logs are held open at once. */
async function inTurn<T, U>(items: readonly T[], work: (item: T) => Promise<U>): Promise<U[]> {
  const results: U[] = [];
  for (const item of items) results.push(await work(item));
  return results;
}

/** The viewer that was built beside this file. */
const viewer = (): string => readFileSync(new URL("./one-file.html", import.meta.url), "utf8");

const json = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** The files of one debrief, named for its log. */
function filesOf(
  { document, series }: Debrief,
  options: Options,
  name: string,
): { name: string; text: string }[] {
  const all = !options.json && !options.csv && !options.geojson && !options.html;
  return [
    ...(all || options.json ? [{ name: `${name}.debrief.json`, text: json(document) }] : []),
    ...(all ? [{ name: `${name}.txt`, text: debriefText(document) }] : []),
    ...(all || options.csv
      ? [
          { name: `${name}.exercises.csv`, text: exercisesCsv(document) },
          ...(document.exercises.some((e) => e.kind === "hold" && e.facts)
            ? [{ name: `${name}.laps.csv`, text: lapsCsv(document) }]
            : []),
          ...(document.exercises.some((e) => e.kind === "approach" && e.facts)
            ? [{ name: `${name}.approaches.csv`, text: approachesCsv(document) }]
            : []),
          { name: `${name}.verdicts.csv`, text: verdictsCsv(document) },
          { name: `${name}.legs.csv`, text: legsCsv(document) },
          { name: `${name}.points.csv`, text: pointsCsv(document, series) },
        ]
      : []),
    ...(all || options.html
      ? [{ name: `${name}.html`, text: oneFileHtml(viewer(), { document, series }) }]
      : []),
    ...(all || options.geojson
      ? [{ name: `${name}.geojson`, text: json(debriefGeoJson(document, series)) }]
      : []),
  ];
}

/** What goes to stdout when no folder is named: the one form that was asked for. */
function printed({ document, series }: Debrief, options: Options): string {
  if (options.json) return json(document);
  if (options.csv) return exercisesCsv(document);
  if (options.html) return oneFileHtml(viewer(), { document, series });
  if (options.geojson) return json(debriefGeoJson(document, series));
  return debriefText(document);
}

export function debriefCommand(): Command {
  const command = new Command("debrief")
    .summary("make a debrief of a track log")
    .description(
      "Reads a track log (GPX, KML, KMZ, FAI IGC, CSV), and the brief of the lesson if there is one, and prints the debrief.",
    )
    .argument("<log...>", "track logs; each gives its own debrief, or one with --join")
    .option("--brief <file>", "what should have been flown: YAML, JSON, or a GPX file with a route")
    .option(
      "--points <file>",
      "fixes and runways that a brief may name, and finals to them that are found without: a table (ident, lat, lon, kind, elevation, declination, end lat, end lon), GPX or KML; may be given again",
      (path: string, before: readonly string[] = []) => [...before, path],
    )
    .option(
      "--standard <name or file>",
      `what to hold it against: ${TEST_STANDARDS.map(({ id }) => id).join(", ")}, none, or a school’s own file; what the brief names if not given`,
    )
    .option("--out <folder>", "write files there instead of printing (every form, or those asked for)")
    .option("--join", "the logs are of one flight: join them, without what was recorded twice")
    .option(
      "--flight <number>",
      "of a log that holds several flights, which; the longest if not given",
      counting,
    )
    .addOption(columnOption())
    .option("--json", "the debrief document alone")
    .option("--csv", "exercises as a table (with --out also verdicts, laps of holds, legs and points)")
    .option("--html", "the sheet as one page that opens anywhere, without a network")
    .option("--geojson", "the flown path, courses, holds and fixes");
  command.action(async (logs: string[], options: Options) => {
    const forms = [options.json, options.csv, options.html, options.geojson].filter(Boolean).length;
    if (forms > 1 && !options.out)
      command.error("choose one of --json, --csv, --html, --geojson, or name a folder with --out", {
        exitCode: 2,
      });
    if (
      logs.length > 1 &&
      !options.join &&
      (options.json || options.html || options.geojson) &&
      !options.out
    ) {
      command.error("several logs give several documents: name a folder with --out", { exitCode: 2 });
    }
    const points = await openPoints(options.points ?? []);
    const standard = options.standard ? await openStandard(options.standard) : null;
    for (const paths of options.join ? [logs] : logs.map((path) => [path])) {
      const path = paths[0]!;
      const log = joinLogs(await inTurn(paths, (each) => openLog(each, options.column)));
      const known = points && { ...points, near: nearMiddle(log) };
      const brief = options.brief ? await openBrief(options.brief, known) : null;
      if (!brief && log.routes.length > 0) {
        note(`${path} carries a route; to compare the flight with it, add --brief ${path}`);
      }
      const runways = points?.runways ?? [];
      const debrief = debriefFlight({ log, brief, flight: options.flight ?? null, standard, runways });
      if (options.out) await writeInto(options.out, filesOf(debrief, options, fileStem(path)));
      else process.stdout.write(printed(debrief, options));
    }
  });
  return command;
}
