/** The debrief document: the versioned JSON contract between the analysis and everything that shows it. */
import { z } from "zod";
import { approachAdviceSchema, approachFactsSchema } from "../approach/facts.ts";
import { arcFactsSchema, arcRemedySchema } from "../course/arc-facts.ts";
import { descentFactsSchema } from "../course/descent-facts.ts";
import { courseFactsSchema, whatWouldHaveWorkedSchema } from "../course/facts.ts";
import { verdictSchema } from "../grade/verdict.ts";
import { holdFactsSchema } from "../hold/facts.ts";
import { CAUTION } from "../quantity/caution.ts";
import { findingSchema, issueSchema, utcSchema as utc } from "../quantity/record.ts";
import { windSchema } from "../wind/record.ts";

const legSchema = z.strictObject({
  kind: z.enum(["straight", "turn"]),
  startUtc: utc,
  endUtc: utc,
  /** Mean track of a straight; track at the start of a turn. */
  trackTrueDeg: z.number(),
  turnDeg: z.number(),
  /** Of a turn of 45 degrees or more: how far its track went past the direction held after it, in its own sense. */
  pastDeg: z.number().nullable().optional(),
  groundSpeedKt: z.number(),
  altitudeFt: z.number().nullable(),
  verticalFpm: z.number().nullable(),
  wind: windSchema,
  headingTrueDeg: z.number().nullable(),
  /** Track less heading, right positive. */
  driftDeg: z.number().nullable(),
});

/** What the document says of every exercise, of whatever kind. */
const anyExercise = {
  title: z.string(),
  source: z.enum(["brief", "found", "fitted"]),
  startUtc: utc.nullable(),
  endUtc: utc.nullable(),
  /** How the exercise was found on the flight, and how sure that is (0 to 1). Null where it was not found. */
  match: z
    .strictObject({ by: z.enum(["between", "geometry", "fitted", "found"]), confidence: z.number() })
    .nullable(),
  findings: z.array(findingSchema),
  verdicts: z.array(verdictSchema),
};

/** `facts` is null where the exercise was not flown. */
const exerciseSchema = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("course"),
    ...anyExercise,
    facts: courseFactsSchema.nullable(),
    whatWouldHaveWorked: whatWouldHaveWorkedSchema,
  }),
  /** What would have worked stands with each lap, as the racetrack solved for its wind. */
  z.strictObject({
    kind: z.literal("hold"),
    ...anyExercise,
    facts: holdFactsSchema.nullable(),
    whatWouldHaveWorked: z.null(),
  }),
  z.strictObject({
    kind: z.literal("arc"),
    ...anyExercise,
    facts: arcFactsSchema.nullable(),
    whatWouldHaveWorked: arcRemedySchema,
  }),
  /** What would have worked stands in the facts, as constant rates and where they would have had to begin. */
  z.strictObject({
    kind: z.literal("descent"),
    ...anyExercise,
    facts: descentFactsSchema.nullable(),
    whatWouldHaveWorked: z.null(),
  }),
  z.strictObject({
    kind: z.literal("approach"),
    ...anyExercise,
    facts: approachFactsSchema.nullable(),
    whatWouldHaveWorked: approachAdviceSchema,
  }),
]);

const remarkSchema = z.strictObject({
  /** Index of the exercise; null: of the flight, or of an exercise that is no more. */
  exercise: z.number().nullable(),
  /** Of the exercise, so that the remark finds it again when the flight is worked out anew; left out for the flight. */
  title: z.string().optional(),
  text: z.string(),
});

/** A verdict of the instructor beside the computed one. */
const overruleSchema = z.strictObject({
  /** Index of the exercise; null: of one that is no more. */
  exercise: z.number().nullable(),
  title: z.string(),
  /** Id of the criterion. */
  criterion: z.string(),
  verdict: verdictSchema.shape.verdict,
  /** Who overruled, and why, as far as was written; empty where not. */
  by: z.string(),
  why: z.string(),
});

export const documentSchema = z.strictObject({
  format: z.literal("hindtrack-debrief"),
  version: z.literal(1),
  caution: z.literal(CAUTION),
  log: z.strictObject({
    name: z.string(),
    file: z.string(),
    kind: z.string(),
    timed: z.boolean(),
    startUtc: utc.nullable(),
    endUtc: utc.nullable(),
    points: z.number(),
    used: z.number(),
    /** Why points were left out: a count for each issue code. */
    dropped: z.record(z.string(), z.number()),
    medianIntervalS: z.number().nullable(),
    longestGapS: z.number().nullable(),
    /** The last point before it. */
    longestGapStartUtc: utc.nullable(),
    distanceNm: z.number(),
    /** Latitude and longitude at the beginning, at each tenth of the time and at the end: by them a flight is known again. */
    trace: z.array(z.tuple([z.number(), z.number()])).optional(),
    /** The flights that the log holds, and the index of this one. `farthestNm` is from where it began. */
    flights: z.array(
      z.strictObject({ startUtc: utc.nullable(), endUtc: utc.nullable(), farthestNm: z.number() }),
    ),
    flight: z.number(),
    issues: z.array(issueSchema),
  }),
  brief: z
    .strictObject({
      title: z.string(),
      file: z.string(),
      source: z.enum(["yaml", "json", "gpx-route", "page"]),
      standard: z.string().nullable(),
      aircraft: z.strictObject({ tasKt: z.number(), doubtKt: z.number() }).nullable(),
      fixes: z.array(
        z.strictObject({ ident: z.string(), latitude: z.number(), longitude: z.number(), kind: z.string() }),
      ),
      issues: z.array(issueSchema),
    })
    .nullable(),
  /** What the exercises are held against; null where none is named, and then there are no verdicts. */
  standard: z.strictObject({ id: z.string(), title: z.string(), citation: z.string() }).nullable(),
  /** At the middle of the flight; null where no model fits the date. */
  variation: z.strictObject({ degrees: z.number(), model: z.string() }).nullable(),
  /** The wind of the day. */
  wind: windSchema.extend({ altitudeFt: z.number().nullable(), priorsUsed: z.array(z.string()) }).nullable(),
  /** Where direction and speed are known, by bands of height, the lowest first; heights as the log gives them. */
  windByHeight: z
    .array(
      z.strictObject({
        lowFt: z.number(),
        highFt: z.number(),
        altitudeFt: z.number(),
        seconds: z.number(),
        wind: windSchema,
      }),
    )
    .optional(),
  legs: z.array(legSchema),
  exercises: z.array(exerciseSchema),
  /** Who flew, and in what, as the user has labelled the flight; empty where that is not said. Missing where neither is. */
  flownBy: z.strictObject({ pilot: z.string(), aircraft: z.string() }).optional(),
  remarks: z.array(remarkSchema),
  /** The instructor's verdicts; the computed ones stand unchanged with the exercises. */
  overrules: z.array(overruleSchema).optional(),
});

export type DebriefDocument = z.infer<typeof documentSchema>;
export type DocumentExercise = DebriefDocument["exercises"][number];
export type CourseRecord = Extract<DocumentExercise, { kind: "course" }>;
export type HoldRecord = Extract<DocumentExercise, { kind: "hold" }>;
export type ArcRecord = Extract<DocumentExercise, { kind: "arc" }>;
export type DescentRecord = Extract<DocumentExercise, { kind: "descent" }>;
export type ApproachRecord = Extract<DocumentExercise, { kind: "approach" }>;
export type DocumentLeg = DebriefDocument["legs"][number];
export type DocumentIssue = z.infer<typeof issueSchema>;
export type Remark = z.infer<typeof remarkSchema>;
export type Overrule = z.infer<typeof overruleSchema>;
export type { ApproachAdvice, ApproachFacts } from "../approach/facts.ts";
export type { ArcFacts, ArcRemedy } from "../course/arc-facts.ts";
export type { ConstantDescent, DescentFacts } from "../course/descent-facts.ts";
export type { CourseFacts, Excursion, WhatWouldHaveWorked } from "../course/facts.ts";
export type { Verdict } from "../grade/verdict.ts";
export type { HoldFacts, HoldLap, Racetrack } from "../hold/facts.ts";
export type { AskedHold, AskedRacetrack, RacetrackAnswer } from "../hold/index.ts";
export type { ExcursionRecord } from "../quantity/excursion-record.ts";
export type { Finding } from "../quantity/record.ts";
export type { WindRecord } from "../wind/record.ts";
