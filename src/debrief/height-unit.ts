/** Heights that a log gives in the other unit: told by the runway where the aircraft rolled, else by the heights briefed. */
import type { ImportedLog } from "../import/imported.ts";
import { METRES_PER_FOOT } from "../quantity/factor.ts";
import type { Issue } from "../quantity/issue.ts";
import type { Feet, FeetMsl, Share } from "../quantity/units.ts";
import type { DebriefDocument, DocumentExercise } from "./document.ts";

/** Heights this near to those of the brief times 3.28, or over it, were written in the other unit. Own choice. */
const FITS: Share = 0.08;
/** ... where several are held against each other, each within so much: students are late. Own choice. */
const FITS_TOGETHER: Feet = 600;
/** ... and all of them together so many times nearer to it than as they stand. Own choice. */
const NEARER = 5;
/** A runway's elevation is met so near. Chosen: a receiver's error and half of what a datum makes (FAI IGC specification: to 102 m). */
const GROUND: Feet = 250;
/** Nearer to the briefed height than this a log may be off by its datum and its receiver alone. As above, the whole of it. */
const BY_DATUM: Feet = 450;

/** The reason that stands for every height, where the unit is in doubt. */
const REASON = "height-unit";

interface Pair {
  readonly logFt: FeetMsl;
  readonly briefFt: FeetMsl;
}

const off = ({ logFt, briefFt }: Pair, factor: number): Feet => Math.abs(logFt / factor - briefFt);

/** As logged, where the brief gives a height to be flown at. */
function briefed({ kind, facts }: DocumentExercise): Pair[] {
  const pair = (logFt: number | null | undefined, briefFt: number | null | undefined): Pair[] =>
    logFt == null || briefFt == null ? [] : [{ logFt, briefFt }];
  if (!facts) return [];
  if (kind === "descent") return facts.began ? pair(facts.crossing?.altitudeFt, facts.toFt) : [];
  if (kind !== "approach") return pair(facts.altitude?.meanFt, facts.altitude?.targetFt);
  const raw = (ft: number | null | undefined) => (ft == null ? null : ft - (facts.height?.correctionFt ?? 0));
  return [
    ...pair(raw(facts.finalFixPassage?.altitudeFt), facts.finalFix?.altitudeFt),
    ...(facts.outcome === "missed" ? pair(raw(facts.minimum?.lowestFt), facts.minimum?.altitudeFt) : []),
  ];
}

/** As logged on the ground, and the elevation given; only where one unit lies clear of the other. */
function grounds(exercises: readonly DocumentExercise[]): Pair[] {
  return exercises.flatMap(({ kind, facts }) => {
    if (kind !== "approach" || !facts?.height || facts.height.anchored === "log") return [];
    const briefFt = facts.runway.elevationFt;
    if (briefFt === null || !(briefFt * (1 / METRES_PER_FOOT - 1) > BY_DATUM + GROUND)) return [];
    return [{ logFt: briefFt - facts.height.correctionFt, briefFt }];
  });
}

/** A briefed height that the log meets as it stands, where others tell of the other unit: then it may be the brief that is wrong. */
const metAsLogged = (exercises: readonly DocumentExercise[]): Pair | null =>
  exercises
    .flatMap(briefed)
    .find((pair) => off(pair, 1) <= BY_DATUM && off(pair, 1 / METRES_PER_FOOT) > BY_DATUM) ?? null;

/** The height that tells of the other unit, beside what it should be; null where the heights may be as they are written. */
function otherUnit(exercises: readonly DocumentExercise[]): (Pair & { readonly high: boolean }) | null {
  const rolled = grounds(exercises);
  const held = exercises.flatMap(briefed);
  for (const high of [true, false]) {
    const factor = high ? 1 / METRES_PER_FOOT : METRES_PER_FOOT;
    const [ground] = rolled;
    if (ground && off(ground, factor) <= GROUND && off(ground, 1) > BY_DATUM) return { ...ground, high };
    if (ground || held.length === 0) continue;
    const within = held.length > 1 ? FITS_TOGETHER : 0;
    const total = (by: number) => held.reduce((sum, pair) => sum + off(pair, by), 0);
    const fits = held.every(
      (pair) => off(pair, factor) <= Math.max(FITS * pair.briefFt, within) && off(pair, 1) > BY_DATUM,
    );
    const best = held.reduce((a, b) => (off(b, factor) < off(a, factor) ? b : a));
    if (fits && total(1) > NEARER * total(factor)) return { ...best, high };
  }
  return null;
}

/** What is to be said of it at the top; null where nothing is. */
export function heightUnitIssue({ log, exercises }: DebriefDocument): Issue | null {
  const found = otherUnit(exercises);
  if (!found) return null;
  const { logFt: flownFt, briefFt, high } = found;
  const met = metAsLogged(exercises);
  return {
    code: "log-height-unit",
    severity: "warning",
    where: { file: log.file },
    facts: {
      ...{ flownFt: Math.round(flownFt), briefFt: Math.round(briefFt), high },
      metFt: met && Math.round(met.briefFt),
    },
  };
}

/** The log as if it had no heights. */
export const withoutHeights = (log: ImportedLog): ImportedLog => ({
  ...log,
  track: { ...log.track, altitude: new Float64Array(log.track.length).fill(Number.NaN) },
});

/** Found by its heights, which do not hold: nothing is told of it. */
function untold(exercise: DocumentExercise): DocumentExercise {
  const { startUtc: fromUtc, endUtc: toUtc } = exercise;
  const verdicts = exercise.verdicts.map((v) => ({
    ...v,
    ...{ verdict: "cannot tell" as const, reason: REASON, value: null, doubt95: null, confidence: null },
    ...{ beyondS: null, worstUtc: null },
  }));
  const findings = [{ code: REASON, facts: {}, evidence: { fromUtc, toUtc } }];
  return { ...exercise, facts: null, findings, verdicts, whatWouldHaveWorked: null };
}

/** The debrief of a log without its heights, with the reason why they are left out. `asLogged`: the one with them. */
export function withHeightUnit(
  document: DebriefDocument,
  asLogged: DebriefDocument,
  issue: Issue,
): DebriefDocument {
  const because = (reason: string) => (reason === "no-height" ? REASON : reason);
  const exercises = document.exercises.map((exercise, i) => {
    const before = asLogged.exercises[i];
    const lost = !exercise.facts && before?.facts && before.title === exercise.title;
    if (lost) return untold(before);
    const verdicts = exercise.verdicts.map((v) => ({ ...v, reason: v.reason && because(v.reason) }));
    const { facts } = exercise;
    const told = facts?.cannotTell.map((c) => ({ ...c, reason: because(c.reason) }));
    return { ...exercise, verdicts, facts: facts && { ...facts, cannotTell: told } } as DocumentExercise;
  });
  const stated = { ...issue, where: { ...issue.where }, facts: { ...issue.facts } };
  return { ...document, exercises, log: { ...document.log, issues: [stated, ...document.log.issues] } };
}
