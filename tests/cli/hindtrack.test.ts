/** The command line as a user calls it: built, started as a process, judged by its output and exit code. */
import { spawn, spawnSync } from "node:child_process";
import {
  createWriteStream,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, inject, it } from "vitest";
import { documentSchema } from "../../src/debrief/document.ts";
import { flyScenario } from "../../src/simulator/index.ts";
import { run } from "./run.ts";

const ROOT = join(import.meta.dirname, "../..");
const scratch = mkdtempSync(join(tmpdir(), "hindtrack-cli-"));
const program = inject("program");
const sample = (name: string, file: string) => join(ROOT, "samples", name, file);

const hindtrack = (...args: string[]) => run(program, scratch, args);

function file(name: string, text: string): string {
  writeFileSync(join(scratch, name), text);
  return name;
}

afterAll(() => rmSync(scratch, { recursive: true, force: true }));

describe("hindtrack debrief", () => {
  const log = sample("strong-crosswind-badly-corrected", "log.gpx");
  const brief = sample("strong-crosswind-badly-corrected", "brief.yaml");

  it("prints the debrief as text, the caution with it, and says nothing on stderr", () => {
    const { status, stdout, stderr } = hindtrack("debrief", log, "--brief", brief);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toContain("Course 241°M to TARNO");
    expect(stdout).toMatch(/Not for\s+navigation/);
    expect(stdout).not.toMatch(/undefined|NaN|null/);
  });

  it("takes the fixes that a brief only names from --points", () => {
    const list = file(
      "vale.csv",
      "ident,lat,lon,kind,declination\nTARNO,35.6,172.3,vor,2.5\nBELVO,35.668,172.069,,\nKESTI,35.785,172.318,,\n",
    );
    const text = readFileSync(brief, "utf8").replace(/fixes:\n( {2}.*\n)+?(?=exercises)/, "");
    expect(text).not.toContain("lat:");
    const named = file("named.yaml", text);
    const { status, stdout, stderr } = hindtrack("debrief", log, "--brief", named, "--points", list);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toBe(
      hindtrack("debrief", log, "--brief", brief).stdout.replaceAll("brief.yaml", "named.yaml"),
    );
    const without = hindtrack("debrief", log, "--brief", named);
    expect(without.status).toBe(1);
    expect(without.stderr).toContain("TARNO");
  });

  it("says the length that it took for a runway of --points, and what hangs on it", () => {
    const list = file("short.csv", "ident,lat,lon,kind,course\n22,35.672,172.395,runway,221.5T\n");
    const { status, stderr } = hindtrack("debrief", log, "--points", list);
    expect(status).toBe(0);
    expect(stderr).toMatch(/short\.csv.*no length is written for the runway 22.*3,000 ft.*localizer/);
  });

  it("offers the final to a runway of --points without a brief, with a table of approaches", () => {
    const { gpx } = flyScenario("approach-tidy-precision", 5002);
    const approach = file("approach.gpx", gpx);
    const list = file(
      "field.csv",
      "ident,lat,lon,kind,elevation,end lat,end lon\n22,35.672,172.395,runway,420,35.66187,172.38403\n",
    );
    const { status, stdout, stderr } = hindtrack("debrief", approach, "--points", list);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toContain("Approach runway 22");
    expect(stdout).toMatch(/found by the runway of the\s+list/);
    const out = join(scratch, "approach-out");
    expect(hindtrack("debrief", approach, "--points", list, "--csv", "--out", out).status).toBe(0);
    expect(readFileSync(join(out, "approach.approaches.csv"), "utf8")).toMatch(/Approach runway 22,found,22/);
  });

  it("writes the document alone on stdout with --json", () => {
    const { status, stdout } = hindtrack("debrief", log, "--brief", brief, "--json");
    expect(status).toBe(0);
    const document = documentSchema.parse(JSON.parse(stdout));
    expect(document.exercises).toHaveLength(4);
  });

  it("writes every form into a folder", () => {
    const { status } = hindtrack("debrief", log, "--brief", brief, "--out", "out");
    expect(status).toBe(0);
    expect(readdirSync(join(scratch, "out")).sort()).toEqual([
      "log.debrief.json",
      "log.exercises.csv",
      "log.geojson",
      "log.html",
      "log.legs.csv",
      "log.points.csv",
      "log.txt",
      "log.verdicts.csv",
    ]);
  });

  it("prints the sheet as one page with --html: it carries the flight, the caution, and fetches nothing", () => {
    const { status, stdout } = hindtrack("debrief", log, "--brief", brief, "--html");
    expect(status).toBe(0);
    expect(stdout).toContain("<title>Lesson 7, radials and a leg, strong wind</title>");
    expect(stdout).toContain("Training aid, after the flight only.");
    expect(stdout).toContain("default-src 'none'");
    expect(stdout.length).toBeLessThan(3e6);
  });

  it("compares with the route of a GPX file", () => {
    const route = file(
      "plan.gpx",
      `<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><rte><name>Plan</name><rtept lat="35.668" lon="172.069"><name>BELVO</name></rtept><rtept lat="35.785" lon="172.318"><name>KESTI</name></rtept></rte></gpx>`,
    );
    const { status, stdout } = hindtrack("debrief", log, "--brief", route);
    expect(status).toBe(0);
    expect(stdout).toContain("Leg BELVO to KESTI");
  });

  const TIMELESS = `<gpx version="1.1"><trk><trkseg>${Array.from({ length: 40 }, (_, i) => `<trkpt lat="${35.6 + i / 400}" lon="172.3"/>`).join("")}</trkseg></trk></gpx>`;

  it("still compares the geometry of a log without times, and says what cannot be told", () => {
    const timeless = file("timeless.gpx", TIMELESS);
    const { status, stdout } = hindtrack("debrief", timeless, "--brief", brief);
    expect(status).toBe(0);
    expect(stdout).toContain("the log has no times");
  });

  it.each([
    ["a missing file", () => "absent.gpx", /absent\.gpx: cannot read it: there is no such file/],
    ["a folder", () => ".", /cannot read it: it is a folder/],
    ["what is not XML", () => file("note.gpx", "a shopping list"), /note\.gpx, line 1, .*not a track log/],
    [
      "XML that is not GPX",
      () => file("other.gpx", "<?xml version='1.0'?>\n<recipe/>"),
      /other\.gpx, line 2, .*“recipe”/,
    ],
    [
      "a GPX without points",
      () => file("none.gpx", "<gpx version='1.1'></gpx>"),
      /none\.gpx, line 1: there are no track points/,
    ],
    ["an empty file", () => file("empty.gpx", ""), /empty\.gpx, .*the file is empty/],
  ])("ends with 1 and one line for %s", (_, make, message) => {
    const { status, stdout, stderr } = hindtrack("debrief", make());
    expect({ status, stdout }).toEqual({ status: 1, stdout: "" });
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    expect(stderr).toMatch(message);
  });

  const COLUMNS = ["time=1", "latitude=2", "longitude=3", "altitude=4 [m]"].flatMap((c) => ["--column", c]);
  const FLAT = "2026-10-17T09:44:10Z;35,6;172,3;914\n2026-10-17T09:44:11Z;35,6;172,301;914\n".repeat(3);
  const TABLE = Array.from(
    { length: 60 },
    (_, i) => `2026-10-17T09:44:${10 + Math.floor(i / 2)}.${(i % 2) * 5}Z;35,6;172,${3000 + i * 3};914\n`,
  ).join("");

  it("asks for the columns of a table that does not tell them, and reads it by --column", () => {
    const table = file("bare.csv", TABLE);
    expect(hindtrack("debrief", table)).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(/bare\.csv, line 1: .*--column/),
    });
    const { status, stdout } = hindtrack("debrief", table, ...COLUMNS, "--json");
    expect(status).toBe(0);
    expect(documentSchema.parse(JSON.parse(stdout)).log).toMatchObject({
      points: 60,
      startUtc: "2026-10-17T09:44:10Z",
    });
    expect(hindtrack("debrief", table, "--column", "hight=4")).toMatchObject({
      status: 2,
      stderr: expect.stringMatching(/quantities are latitude, longitude/),
    });
  });

  it.skipIf(process.platform === "win32")(
    "is cancelled by Ctrl-C while it reads, with one line, by the signal itself",
    async () => {
      const pipe = join(scratch, "endless.gpx");
      expect(spawnSync("mkfifo", [pipe]).status).toBe(0);
      const running = spawn(process.execPath, [program, "debrief", pipe], {
        stdio: ["ignore", "pipe", "pipe"],
      });
      let said = "";
      for (const stream of [running.stdout, running.stderr])
        stream.on("data", (text) => {
          said += text;
        });
      const ended = new Promise<string | null>((resolve) =>
        running.on("close", (_, signal) => resolve(signal)),
      );
      const writer = createWriteStream(pipe);
      await new Promise<void>((resolve) =>
        writer.write(readFileSync(log).subarray(0, 50_000), () => resolve()),
      );
      await new Promise((resolve) => setTimeout(resolve, 300));
      running.kill("SIGINT");
      expect(await ended).toBe("SIGINT");
      writer.destroy();
      expect(said).toBe(`hindtrack: ${pipe}: cancelled while it was read; nothing was written for it\n`);
    },
  );

  it("ends with 1 where there is no flight in a log, and says so on stderr as well", () => {
    const { status, stdout, stderr } = hindtrack("debrief", file("bare.csv", FLAT), ...COLUMNS);
    expect(status).toBe(1);
    expect(stderr).toMatch(/bare\.csv: There is no flight in this log/);
    expect(stdout).toContain("There is no flight in this log");
  });

  it("says that --column does nothing for a log that is no table", () => {
    const { status, stderr } = hindtrack("debrief", log, "--column", "latitude=2");
    expect({ status, stderr }).toEqual({
      status: 0,
      stderr: `${log} is no table, so --column was not used for it\n`,
    });
  });

  it.skipIf(process.platform !== "linux")("ends with 1 where no folder can be made for --out", () => {
    const { status, stderr } = hindtrack("debrief", log, "--out", "/proc/hindtrack-x");
    expect({ status, stderr }).toEqual({
      status: 1,
      stderr: "hindtrack: /proc/hindtrack-x: cannot write it: no folder can be made there; name another\n",
    });
  });

  const briefWith = (line: string) =>
    `brief: 1\nfixes:\n  TARNO: { lat: 35.6, lon: 172.3, kind: vor }\nexercises:\n  - ${line}\n`;
  it.each([
    ["a wrong key", "{ course: 241, to: TARNO, hight_ft: 4000 }", /line 5, column \d+, .*“hight_ft”/],
    ["an unknown fix", "{ course: 241, to: TARNNO }", /line 5, column \d+, .*“TARNNO”.*Did you mean “TARNO”/],
    ["a course of 400", "{ course: 400, to: TARNO }", /line 5, column \d+, .*400 is out of range/],
  ])("ends with 1 and the place for a brief with %s", (_, line, message) => {
    const { status, stderr } = hindtrack("debrief", log, "--brief", file("b.yaml", briefWith(line)));
    expect(status).toBe(1);
    expect(stderr).toMatch(message);
  });
});

describe("a wrong call", () => {
  it.each([[["debrief"]], [["fly", "nowhere", "--out", "x"]], [["sing"]], [["fly", "calm-and-tidy"]]])(
    "%j ends with 2",
    (args) => {
      const { status, stderr } = hindtrack(...args);
      expect(status).toBe(2);
      expect(stderr).not.toBe("");
    },
  );
});

describe("hindtrack racetrack", () => {
  const call = ["racetrack", "--inbound", "247", "--tas", "100", "--wind", "157/20"];

  it("prints the answer in words, or as a record", () => {
    const { status, stdout, stderr } = hindtrack(...call, "--turns", "right");
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toContain(
      "This wind asks for 2.8 times the inbound correction outbound, 70 s from wings level.",
    );
    expect(stdout).toMatch(/Not for\s+navigation/);
    const answer = JSON.parse(hindtrack(...call, "--json").stdout);
    expect(answer.asked.reference).toBe("magnetic");
    expect(answer.solved.outboundS).toBeCloseTo(70, 0);
  });

  it.each([
    [[...call, "--leg", "4"], /--leg: “4” cannot be read as the leg\. Write it as in 1 min, 90 s or 4 NM\./],
    [[...call, "--wind", "157T/20"], /--wind: The inbound course is magnetic and the wind true/],
    [[...call, "--wind-doubt", "x"], /--wind-doubt: “x”/],
    [["racetrack", "--inbound", "247"], /--tas/],
  ])("%j ends with 2 and says how it is written", (args, message) => {
    const { status, stdout, stderr } = hindtrack(...args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toMatch(message);
  });
});

describe("hindtrack fly", () => {
  it("writes the committed sample again, byte for byte", () => {
    const { status } = hindtrack("fly", "calm-and-tidy", "--seed", "1", "--out", "flown");
    expect(status).toBe(0);
    for (const name of ["log.gpx", "brief.yaml"]) {
      expect(existsSync(join(scratch, "flown", name))).toBe(true);
      expect(readFileSync(join(scratch, "flown", name), "utf8")).toBe(
        readFileSync(sample("calm-and-tidy", name), "utf8"),
      );
    }
  });
});
