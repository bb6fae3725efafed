/** `hindtrack debrief LOG...`: a track log and perhaps a brief become a debrief, as text, JSON, CSV or GeoJSON. */
import { readFileSync } from "node:fs";
import { Command, InvalidArgumentError } from "commander";
import {
  approachesCsv,
  type Debrief,
  debriefFlight,
  debriefGeoJson,
  debriefText,
  exercisesCsv,
  fileStem,
  joinLogs,
  lapsCsv,
  legsCsv,
  noFlight,
  oneFileHtml,
  pointsCsv,
  TEST_STANDARDS,
  verdictsCsv,
} from "../index.ts";
import { type Columns, columnOption } from "./column-option.ts";
import { inTurn, nearMiddle, openBrief, openPoints, openStandard } from "./open-beside.ts";
import { openLog } from "./open-log.ts";
import { complainOf, note, writeInto } from "./output.ts";

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

/** Which of several, counted from 1 as a person does; the analysis counts from 0. */
function counting(text: string): number {
  if (!/^[1-9]\d{0,5}$/.test(text)) throw new InvalidArgumentError("count from 1.");
  return Number(text) - 1;
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
      if (options.column && log.track.kind !== "csv")
        note(`${path} is no table, so --column was not used for it`);
      const known = points && { ...points, near: nearMiddle(log) };
      const brief = options.brief ? await openBrief(options.brief, known) : null;
      if (!brief && log.routes.length > 0) {
        note(`${path} carries a route; to compare the flight with it, add --brief ${path}`);
      }
      const runways = points?.runways ?? [];
      const debrief = debriefFlight({ log, brief, flight: options.flight ?? null, standard, runways });
      const { flights, flight } = debrief.document.log;
      if (flights.length > 1 && options.flight === undefined)
        note(`${path} holds ${flights.length} flights; this is number ${flight + 1}: choose with --flight`);
      const none = noFlight(debrief.document.log);
      if (none !== "") {
        complainOf(`${path}: ${none}`);
        process.exitCode = 1;
      }
      if (options.out) await writeInto(options.out, filesOf(debrief, options, fileStem(path)));
      else process.stdout.write(printed(debrief, options));
    }
  });
  return command;
}
