/** The debrief document: the versioned JSON contract between the analysis and everything that shows it. */
import { z } from "zod";

export const CAUTION =
  "Training aid, after the flight only. Not for navigation, not an official grade, no substitute for the instructor, the published procedure, the aircraft’s instruments or local rules. GPS height is not an altimeter.";

const utc = z.iso.datetime();
const fact = z.union([z.string(), z.number(), z.boolean(), z.null()]);
const where = z.strictObject({
  file: z.string().optional(),
  line: z.number().optional(),
  column: z.number().optional(),
  point: z.number().optional(),
  path: z.string().optional(),
});

export const issueSchema = z.strictObject({
  code: z.string(),
  severity: z.enum(["error", "warning", "note"]),
  where,
  facts: z.record(z.string(), fact),
});

/** Wind *from*, true. `along` is tailwind positive, `across` pushes to the right positive, both on the mean track. `…95` are half-widths of 95 % intervals. */
export const windSchema = z.strictObject({
  knowledge: z.enum(["full", "along", "none"]),
  fromTrueDeg: z.number().nullable(),
  speedKt: z.number().nullable(),
  alongKt: z.number().nullable(),
  acrossKt: z.number().nullable(),
  along95Kt: z.number().nullable(),
  across95Kt: z.number().nullable(),
  ellipse95Kt: z
    .strictObject({ majorKt: z.number(), minorKt: z.number(), majorTrueDeg: z.number() })
    .nullable(),
  tasKt: z.number().nullable(),
  tas95Kt: z.number().nullable(),
  restsOn: z.enum(["measured", "turns", "courses", "prior", "nothing"]),
});

const legSchema = z.strictObject({
  kind: z.enum(["straight", "turn"]),
  startUtc: utc,
  endUtc: utc,
  /** Mean track of a straight; track at the start of a turn. */
  trackTrueDeg: z.number(),
  turnDeg: z.number(),
  groundSpeedKt: z.number(),
  altitudeFt: z.number().nullable(),
  verticalFpm: z.number().nullable(),
  wind: windSchema,
  headingTrueDeg: z.number().nullable(),
  /** Track less heading, right positive. */
  driftDeg: z.number().nullable(),
});

/** What a finding rests on: a time (null where the log has none) and the values. */
const findingSchema = z.strictObject({
  code: z.string(),
  facts: z.record(z.string(), fact),
  evidence: z.strictObject({ fromUtc: utc.nullable(), toUtc: utc.nullable() }),
});

const verdictSchema = z.strictObject({
  criterion: z.string(),
  verdict: z.enum(["met", "not met", "cannot tell", "not flown"]),
  reason: z.string().nullable(),
  value: z.number().nullable(),
  limit: z.number().nullable(),
  unit: z.string(),
  confidence: z.number().nullable(),
  citation: z.string(),
});

const scaleSchema = z.discriminatedUnion("kind", [
  z.strictObject({ id: z.string(), kind: z.literal("angular"), fullScaleDeg: z.number(), label: z.string() }),
  z.strictObject({ id: z.string(), kind: z.literal("linear"), fullScaleNm: z.number(), label: z.string() }),
]);

/** The track left the course (A), the needle reached a quarter (B), the pilot corrected (C). */
const excursionSchema = z.strictObject({
  /** The side that the aircraft went to. */
  side: z.enum(["left", "right"]),
  /** A: the track angle error passed its threshold for good. */
  trackOffUtc: utc,
  /** Mean track angle error from A to C. */
  trackErrorDeg: z.number(),
  trackTrueDeg: z.number(),
  /** B, or null where the needle never reached a quarter. */
  quarterUtc: utc.nullable(),
  /** C: first turn back of the right sign, or null where none came. */
  correctedUtc: utc.nullable(),
  /** A to B. */
  silentS: z.number().nullable(),
  /** A to C. */
  leadS: z.number().nullable(),
  /** Worst distance off course before it was back, right positive, and the needle's share then. */
  worstCrossTrackNm: z.number(),
  worstNeedle: z.number(),
  worstUtc: utc,
});

/**
 * Facts of a course. Signs: right of course positive, everywhere; the needle goes the other way.
 * `needle` values are deviation over full scale (1 = full). Shares are of the judged time, or of the judged
 * distance where the log has no times. Distances NM, angles degrees.
 */
export const courseFactsSchema = z.strictObject({
  form: z.enum(["to", "from", "leg", "fitted"]),
  fix: z.string().nullable(),
  fromFix: z.string().nullable(),
  courseTrueDeg: z.number(),
  courseMagneticDeg: z.number().nullable(),
  variation: z.strictObject({
    degrees: z.number(),
    from: z.enum(["station", "model", "written-true", "unknown"]),
    model: z.string().nullable(),
  }),
  scale: scaleSchema,
  /** The judged line: where it begins and ends, for maps. */
  line: z.strictObject({ start: z.tuple([z.number(), z.number()]), end: z.tuple([z.number(), z.number()]) }),
  flownNm: z.number(),
  judged: z.strictObject({
    fromUtc: utc.nullable(),
    toUtc: utc.nullable(),
    seconds: z.number().nullable(),
    distanceNm: z.number(),
    shareOf: z.enum(["time", "distance"]),
    /** Why the span begins and ends where it does, as codes: "established", "start-of-match", "near-station", "end-of-match". */
    begins: z.string(),
    ends: z.string(),
  }),
  crossTrack: z.strictObject({
    maxNm: z.number(),
    maxUtc: utc.nullable(),
    meanNm: z.number(),
    rmsNm: z.number(),
    /** Half-width of the 95 % interval of one value, from the smoothed position. */
    doubt95Nm: z.number(),
  }),
  needle: z.strictObject({
    max: z.number(),
    maxUtc: utc.nullable(),
    doubt95: z.number(),
    beyondQuarter: z.number(),
    beyondHalf: z.number(),
    beyondThreeQuarter: z.number(),
    beyondFull: z.number(),
  }),
  trackAngleError: z
    .strictObject({
      meanDeg: z.number(),
      rmsDeg: z.number(),
      maxDeg: z.number(),
      maxUtc: utc,
      doubt95Deg: z.number(),
    })
    .nullable(),
  groundSpeedKt: z.number().nullable(),
  wind: windSchema.nullable(),
  /** Track less heading over the judged span, right positive. */
  drift: z.strictObject({ meanDeg: z.number(), doubt95Deg: z.number() }).nullable(),
  /** Heading less course, right positive: the mean that was flown, and what this wind needed. */
  windCorrection: z
    .strictObject({
      flownDeg: z.number(),
      neededDeg: z.number(),
      doubt95Deg: z.number(),
      headingFlownTrueDeg: z.number(),
      headingNeededTrueDeg: z.number(),
    })
    .nullable(),
  intercept: z
    .strictObject({
      startUtc: utc,
      /** Track less course at the cut, right positive. */
      angleDeg: z.number(),
      startCrossTrackNm: z.number(),
      joinedUtc: utc,
      /** How far past the course before coming back, never negative. */
      overshootNm: z.number(),
    })
    .nullable(),
  excursions: z.array(excursionSchema),
  /** Reversals of the track (or of the estimated heading) beyond what noise makes. */
  reversals: z
    .strictObject({
      count: z.number(),
      perMinute: z.number(),
      medianAmplitudeDeg: z.number().nullable(),
      medianPeriodS: z.number().nullable(),
    })
    .nullable(),
  altitude: z
    .strictObject({
      targetFt: z.number().nullable(),
      meanFt: z.number(),
      worstFt: z.number(),
      worstUtc: utc.nullable(),
    })
    .nullable(),
  /** What could not be told, and why, as codes. */
  cannotTell: z.array(z.strictObject({ fact: z.string(), reason: z.string() })),
});

const exerciseSchema = z.strictObject({
  kind: z.enum(["course", "arc", "hold", "descent", "approach"]),
  title: z.string(),
  source: z.enum(["brief", "found", "fitted"]),
  startUtc: utc.nullable(),
  endUtc: utc.nullable(),
  /** How the exercise was found on the flight, and how sure that is (0 to 1). Null where it was not found. */
  match: z
    .strictObject({ by: z.enum(["between", "geometry", "fitted", "whole-log"]), confidence: z.number() })
    .nullable(),
  /** Null where not flown, or not compared by this version. */
  facts: courseFactsSchema.nullable(),
  findings: z.array(findingSchema),
  verdicts: z.array(verdictSchema),
  whatWouldHaveWorked: z
    .strictObject({
      headingTrueDeg: z.number(),
      headingMagneticDeg: z.number().nullable(),
      windCorrectionDeg: z.number(),
      doubt95Deg: z.number(),
      /** From the worst point: a cut of so many degrees (right positive) that rejoins in so many miles. */
      rejoin: z
        .strictObject({
          cutDeg: z.number(),
          headingTrueDeg: z.number(),
          distanceNm: z.number(),
          fromUtc: utc,
        })
        .nullable(),
    })
    .nullable(),
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
    distanceNm: z.number(),
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
  /** At the middle of the flight; null where no model fits the date. */
  variation: z.strictObject({ degrees: z.number(), model: z.string() }).nullable(),
  /** The wind of the day. */
  wind: windSchema.extend({ altitudeFt: z.number().nullable(), priorsUsed: z.array(z.string()) }).nullable(),
  legs: z.array(legSchema),
  exercises: z.array(exerciseSchema),
  remarks: z.array(z.strictObject({ exercise: z.number().nullable(), text: z.string() })),
});

export type DebriefDocument = z.infer<typeof documentSchema>;
export type DocumentExercise = DebriefDocument["exercises"][number];
export type DocumentLeg = DebriefDocument["legs"][number];
export type DocumentWind = z.infer<typeof windSchema>;
export type DocumentIssue = z.infer<typeof issueSchema>;
export type CourseFacts = z.infer<typeof courseFactsSchema>;
export type Excursion = CourseFacts["excursions"][number];
export type Finding = DocumentExercise["findings"][number];
export type WhatWouldHaveWorked = DocumentExercise["whatWouldHaveWorked"];
