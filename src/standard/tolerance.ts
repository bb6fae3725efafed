/** What a test of the instrument rating allows, as published: limits as data with citations, no logic. */
import type { NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import { ENTRY_TOLERANCE } from "./holding.ts";
import { STABILISED } from "./stabilised.ts";
import type { Limit, TestStandard } from "./test-standard.ts";

const within = <T extends number>(limit: T, citation: string): Limit<T> => ({
  limit,
  edge: "within",
  citation,
});

/** The tests ask for the time or length of a leg without a number. Common practice, no source; of the distance: chosen, twice what one is read to. */
export const LEG_TIME: Seconds = 10;
export const LEG_DISTANCE: NauticalMiles = 0.3;

const US = "FAA-S-ACS-8C";
const EU = "Part-FCL Appendix 7, flight test tolerances";

/** No test standard gives it a number: a published minimum altitude has none to spare. */
const STEP_DOWN_US = "FAA AIM 5-4-5, from memory: a step-down’s altitude is a minimum until past it";
const STEP_DOWN_EU = "common practice, no source: a step-down’s altitude is a minimum until past it";

/**
 * No test standard gives a number for a stable approach: these are the numbers that the trade uses, whatever the
 * standard. A dot is half scale (see `stabilised.ts`).
 */
const GATES: TestStandard["approach"]["gates"] = {
  needle: within(STABILISED[0]!.lateral!, "Flight Safety Foundation, ALAR, as quoted: within one dot"),
  sink: within(STABILISED[0]!.mostSink, "Flight Safety Foundation, ALAR, as quoted: at most 1,000 ft/min"),
};

/**
 * Trap: the edition before worded it so, and at exactly three quarters it is out by the one and in by the other. Not in
 * force since May 2024.
 */
export const ACS_8B_NEEDLE: Limit<Share> = {
  limit: 0.75,
  edge: "less-than",
  citation: "FAA-S-ACS-8B VI.A, as quoted: less than 3/4-scale",
};

/**
 * The standards that a brief may name. US: FAA-S-ACS-8C, Instrument Rating, Airplane (2023), as quoted in a listing of
 * its tasks. Europe: Commission Regulation (EU) No 1178/2011, annex I, appendix 7, paragraph 11; tracking of radio aids
 * within 5 degrees is half scale of a VOR's 10.
 */
export const TEST_STANDARDS: readonly TestStandard[] = [
  {
    id: "instrument-rating-us",
    title: "US instrument rating",
    citation: "FAA-S-ACS-8C, Instrument Rating, Airplane",
    course: {
      needle: within(0.75, `${US} V.A.S6: at most ¾ scale`),
      briefly: null,
      altitude: within(100, `${US} V.A.S5: ±100 ft`),
    },
    hold: {
      needle: within(0.75, `${US} III.B.S4: at most ¾ scale`),
      altitude: within(100, `${US} III.B.S4: ±100 ft`),
      entry: within(
        ENTRY_TOLERANCE,
        `${US} III.B: an appropriate entry; by sector, within 5° of its border: FAA AIM 5-3-8 j`,
      ),
      legTime: within(
        LEG_TIME,
        `${US} III.B: proper timing, without a number; 10 s is common practice, no source`,
      ),
      legDistance: within(
        LEG_DISTANCE,
        `${US} III.B: the leg length as cleared, without a number; 0.3 NM is our own choice`,
      ),
      rules: "us",
      speed: true,
    },
    arc: {
      distance: within(1, `${US} V.A.S6: ±1 NM`),
      altitude: within(100, `${US} V.A.S5: ±100 ft`),
    },
    descent: { altitude: within(100, `${US} V.B.S7: ±100 ft`) },
    approach: {
      needle: within(0.75, `${US} VI.A.S12, VI.B.S12: at most ¾ scale`),
      briefly: null,
      glidePath: within(0.75, `${US} VI.B.S12: at most ¾ scale`),
      barometricPath: null,
      fixAltitude: within(100, `${US} VI.A.S9, VI.B.S9: ±100 ft before the final`),
      minimumDescent: {
        above: within(100, `${US} VI.A.S12: +100/-0 ft`),
        below: within(0, `${US} VI.A.S12: +100/-0 ft`),
      },
      decision: { above: null, below: null },
      stepDown: within(0, STEP_DOWN_US),
      missedTrack: within(10, `${US} VI.C.S7: ±10° on heading, course or bearing`),
      gates: GATES,
    },
  },
  {
    id: "instrument-rating-eu",
    title: "European instrument rating",
    citation: EU,
    course: {
      needle: within(
        0.5,
        `${EU}: ±5° on radio aids, half scale where angular, half the RNP value where linear`,
      ),
      briefly: within(1, `${EU}: brief excursions to the RNP value`),
      altitude: within(100, `${EU}: ±100 ft`),
    },
    hold: {
      needle: within(0.5, `${EU}: ±5° on radio aids`),
      altitude: within(100, `${EU}: ±100 ft`),
      entry: within(
        ENTRY_TOLERANCE,
        "ICAO Doc 8168 Vol. I, as quoted: entry by sector, within 5° of its border",
      ),
      legTime: within(
        LEG_TIME,
        "ICAO Doc 8168 Vol. I, as quoted: timed outbound, without a tolerance; 10 s is common practice, no source",
      ),
      legDistance: within(
        LEG_DISTANCE,
        "ICAO Doc 8168 Vol. I, as quoted: limited by distance, without a tolerance; 0.3 NM is our own choice",
      ),
      rules: "icao",
      speed: true,
    },
    arc: {
      distance: null,
      altitude: within(100, `${EU}: ±100 ft`),
    },
    descent: { altitude: within(100, `${EU}: ±100 ft`) },
    approach: {
      needle: within(0.5, `${EU}: half scale where angular, half the RNP value where linear`),
      briefly: within(1, `${EU}: brief excursions to the RNP value`),
      glidePath: within(0.5, `${EU}: half scale`),
      barometricPath: {
        below: within(75, `${EU}: never more than 75 ft below`),
        aboveLow: within(75, `${EU}: at most 75 ft above, at or below 1,000 ft`),
      },
      fixAltitude: within(100, `${EU}: ±100 ft`),
      minimumDescent: {
        above: within(50, `${EU}: minimum descent altitude +50/-0 ft`),
        below: within(0, `${EU}: minimum descent altitude +50/-0 ft`),
      },
      decision: {
        above: within(50, `${EU}: go-around at decision altitude +50/-0 ft`),
        below: within(0, `${EU}: go-around at decision altitude +50/-0 ft`),
      },
      stepDown: within(0, STEP_DOWN_EU),
      missedTrack: within(5, `${EU}: ±5° on headings and on radio aids`),
      gates: GATES,
    },
  },
];
