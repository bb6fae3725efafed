/** Holds in numbers: the schemas of what the document says of them. */
import { z } from "zod";
import { heightReachedSchema, onPurposeSchema } from "../quantity/height-record.ts";
import { variationSchema } from "../quantity/magnetic.ts";
import { unseenSchema, utcSchema as utc } from "../quantity/record.ts";
import { windSchema } from "../wind/record.ts";
import { lapSchema } from "./lap-facts.ts";
import { noRacetrackSchema, racetrackDoubtSchema, racetrackSchema } from "./racetrack-facts.ts";

export type { HoldLap } from "./lap-facts.ts";
export type { NoRacetrack, Racetrack, RacetrackDoubt, RuleOutcome } from "./racetrack-facts.ts";

const entrySchema = z.enum(["direct", "teardrop", "parallel"]);

export const holdFactsSchema = z.strictObject({
  fix: z.strictObject({
    /** Null where the hold was found, without a brief. */
    ident: z.string().nullable(),
    latitude: z.number(),
    longitude: z.number(),
    /** Half-width of the 95 % interval; null where it is published. */
    doubt95Nm: z.number().nullable(),
  }),
  inboundTrueDeg: z.number(),
  inboundMagneticDeg: z.number().nullable(),
  /** Missing in documents of earlier versions. */
  variation: variationSchema.optional(),
  /** Half-width of the 95 % interval; null where it is published. */
  inbound95Deg: z.number().nullable(),
  turns: z.enum(["left", "right"]),
  /** As published, else the time of the standard at that height; of a hold found, as flown where that is far from it. */
  leg: z.union([
    z.strictObject({ by: z.literal("time"), seconds: z.number() }),
    z.strictObject({ by: z.literal("distance"), distanceNm: z.number() }),
  ]),
  /** What full scale of the needle means on the inbound course; null where none is published. */
  scale: z
    .strictObject({ id: z.string(), label: z.string(), kind: z.enum(["angular", "linear"]) })
    .nullable(),
  /** Half-width of the 95 % interval of the time of a leg. */
  legTime95S: z.number(),
  /** The longest silence of the log in which whole legs of this hold may lie; null where none is. */
  legsUnseen: z.strictObject({ fromUtc: utc, toUtc: utc, seconds: z.number() }).nullable(),
  /** Whose timing: the inbound leg's (US) or the outbound leg's (ICAO). */
  timing: z.enum(["us", "icao"]),
  /** Whether the inbound course found is sure; null where it is published. */
  sure: z.boolean().nullable(),
  /** "racetrack, maybe a circuit": neither a fix nor a height tells it from a traffic circuit. */
  maybeCircuit: z.boolean(),
  /** A single lap that no brief asked for and no entry speaks for: maybe only a turn to lose time. Without an entry then; missing in documents of earlier versions. */
  loneLap: z.boolean().optional(),
  /** Where a published hold was flown: the fix and course that the flight itself shows. */
  asFlown: z
    .strictObject({
      fixOffNm: z.number(),
      /** Inbound course flown less the published one, right positive, with the half-width of its 95 % interval. */
      inboundOffDeg: z.number(),
      inbound95Deg: z.number().optional(),
      /** Whether it was surely another course than the published one. Like its doubt missing in documents of earlier versions. */
      otherCourse: z.boolean().optional(),
      turns: z.enum(["left", "right"]),
    })
    .nullable(),
  entry: z
    .strictObject({
      utc,
      /** Heading on reaching the fix: estimated, or the track where the wind is not known. */
      headingTrueDeg: z.number(),
      headingIs: z.enum(["heading", "track"]),
      /** Half-width of its 95 % interval against the inbound course; null for a track. */
      heading95Deg: z.number().nullable(),
      /** By the sectors; `alsoAllowed` within 5 degrees of their border. */
      asked: entrySchema,
      alsoAllowed: z.array(entrySchema),
      /** From the heading to the nearest border of the sector asked. */
      fromBorderDeg: z.number(),
      flown: entrySchema.nullable(),
      /** Why no entry is told: but for `wrong-way` this is then a passage of the fix that may not be the arrival, and its heading and sector tell nothing of it. Missing in documents of earlier versions. */
      untold: z.enum(["log-begins", "not-clear", "wrong-way"]).optional(),
      fixMissNm: z.number(),
      /** The outbound leg of a teardrop or parallel entry. `trackOffDeg`: off the reciprocal of the inbound course, toward the holding side positive. */
      outbound: z
        .strictObject({
          seconds: z.number(),
          headingTrueDeg: z.number().nullable(),
          trackTrueDeg: z.number(),
          trackOffDeg: z.number(),
        })
        .nullable(),
    })
    .nullable(),
  laps: z.array(lapSchema),
  /** The log begins or ends in flight in a lap that is not among them: from its first point or the last pass of the fix on, to the first or the last point. Missing in documents of earlier versions. */
  lapCut: z
    .strictObject({
      before: z.strictObject({ fromUtc: utc, toUtc: utc }).nullable(),
      after: z.strictObject({ fromUtc: utc, toUtc: utc }).nullable(),
    })
    .optional(),
  /** The racetrack in still air, at the airspeed of the hold; null where no airspeed is known. */
  stillAir: racetrackSchema.nullable(),
  /** What the wind of all laps together asked for. */
  solved: z.union([racetrackSchema, noRacetrackSchema]).nullable(),
  solvedDoubt: racetrackDoubtSchema.nullable(),
  /** Geometry, not the procedure's protected airspace: time and farthest excursion on the side away from the turns, after the entry. */
  nonHoldingSide: z.strictObject({
    seconds: z.number(),
    farthestNm: z.number(),
    farthestUtc: utc.nullable(),
  }),
  altitude: z
    .strictObject({
      targetFt: z.number().nullable(),
      meanFt: z.number(),
      lowestFt: z.number(),
      highestFt: z.number(),
      /** How far the logged heights may have wandered within the hold, 95 %. */
      change95Ft: z.number(),
      /** Farthest from the target, or from the mean; and how far an altimeter may have shown another height then, 95 %. */
      worstFt: z.number(),
      altimeter95Ft: z.number(),
      worstUtc: utc,
      onPurpose: onPurposeSchema,
      reached: heightReachedSchema,
      /** Of half the range. */
      unseenRange: unseenSchema,
    })
    .nullable(),
  /** The airspeed against the holding limit of the standard at that height. `indicated` is estimated from the true airspeed and the height. */
  speed: z
    .strictObject({
      trueKt: z.number(),
      indicatedKt: z.number(),
      doubt95Kt: z.number(),
      mostKt: z.number().nullable(),
      citation: z.string(),
    })
    .nullable(),
  wind: windSchema.nullable(),
  /** What could not be told, and why, as codes. */
  cannotTell: z.array(z.strictObject({ fact: z.string(), reason: z.string() })),
});
export type HoldFacts = z.infer<typeof holdFactsSchema>;
