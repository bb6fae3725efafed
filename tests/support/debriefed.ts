/** Debriefs from bytes to document, as a reader gets them: the samples, and logs written point by point. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { readBrief } from "../../src/brief/index.ts";
import type {
  ApproachFacts,
  ApproachRecord,
  CourseFacts,
  CourseRecord,
  DebriefDocument,
  HoldFacts,
  HoldRecord,
} from "../../src/debrief/document.ts";
import { type Debrief, type DebriefInput, debriefFlight } from "../../src/debrief/index.ts";
import { readLog } from "../../src/import/index.ts";
import type { Truth } from "../../src/simulator/truth.ts";

const FOLDER = join(import.meta.dirname, "../../samples");

/** Names of the samples. */
export const SAMPLES = readdirSync(FOLDER, { withFileTypes: true }).flatMap((e) =>
  e.isDirectory() ? [e.name] : [],
);

const read = (name: string, file: string) => readFileSync(join(FOLDER, name, file), "utf8");

/** `more`: what else the recipe is given, as the runways of a list. */
export async function debriefOf(
  gpx: string,
  brief: string | null,
  more: Partial<DebriefInput> = {},
): Promise<Debrief> {
  const log = await readLog([new TextEncoder().encode(gpx)], "log.gpx");
  return debriefFlight({ log, brief: brief === null ? null : readBrief(brief, "brief.yaml"), ...more });
}

/** By what their brief is of. */
const briefed = (kind: RegExp) => SAMPLES.filter((name) => kind.test(read(name, "brief.yaml")));
export const HOLD_SAMPLES = briefed(/\bhold:/);
export const APPROACH_SAMPLES = briefed(/\bapproach:/);
export const ARC_SAMPLES = briefed(/\barc:/);
export const DESCENT_SAMPLES = briefed(/\bdescent:/);
/** Of courses alone. */
export const COURSE_SAMPLES = briefed(/\bcourse:/).filter((name) => !ARC_SAMPLES.includes(name));

const done = new Map<string, Promise<Debrief>>();

/** The debrief of a sample; flown through once a test file. */
export function sampleDebrief(name: string): Promise<Debrief> {
  const known = done.get(name) ?? debriefOf(read(name, "log.gpx"), read(name, "brief.yaml"));
  done.set(name, known);
  return known;
}

/** What the simulator knows of a sample. */
export const sampleTruth = (name: string): Truth => JSON.parse(read(name, "truth.json"));

export type MeasuredCourse = CourseRecord & { readonly facts: CourseFacts };

/** The exercises of a debrief in which every one is a course that was flown and measured. */
export function courses(document: DebriefDocument): MeasuredCourse[] {
  return document.exercises.map((exercise) => {
    if (exercise.kind !== "course" || !exercise.facts)
      throw new Error(`no measured course: ${exercise.title}`);
    return { ...exercise, facts: exercise.facts };
  });
}

export type MeasuredHold = HoldRecord & { readonly facts: HoldFacts };

/** The holds of a debrief, each of which was flown and measured. */
export function holds(document: DebriefDocument): MeasuredHold[] {
  return document.exercises.flatMap((exercise) => {
    if (exercise.kind !== "hold") return [];
    if (!exercise.facts) throw new Error(`no measured hold: ${exercise.title}`);
    return [{ ...exercise, facts: exercise.facts }];
  });
}

export type MeasuredApproach = ApproachRecord & { readonly facts: ApproachFacts };

/** The approaches of a debrief, each of which was flown and measured. */
export function approaches(document: DebriefDocument): MeasuredApproach[] {
  return document.exercises.flatMap((exercise) => {
    if (exercise.kind !== "approach") return [];
    if (!exercise.facts) throw new Error(`no measured approach: ${exercise.title}`);
    return [{ ...exercise, facts: exercise.facts }];
  });
}

export interface LoggedPoint {
  readonly latitude: number;
  readonly longitude: number;
  /** Seconds since 17 October 2026, 01:00 UTC; null for a point without a time. */
  readonly seconds: number | null;
}

const START = Date.UTC(2026, 9, 17, 1);

/** A GPX 1.1 text of the points, at 1,200 m. */
export function gpxText(points: readonly LoggedPoint[], name = "by construction"): string {
  const rows = points.map(({ latitude, longitude, seconds }) => {
    const time = seconds === null ? "" : `<time>${new Date(START + seconds * 1000).toISOString()}</time>`;
    return `<trkpt lat="${latitude.toFixed(8)}" lon="${longitude.toFixed(8)}"><ele>1200</ele>${time}</trkpt>`;
  });
  return `<?xml version="1.0"?>\n<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>${name}</name><trkseg>\n${rows.join("\n")}\n</trkseg></trk></gpx>\n`;
}
