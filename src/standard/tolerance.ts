/** What a test of the instrument rating allows, as published: limits as data with citations, no logic. */
import type { Feet, NauticalMiles, Share } from "../quantity/units.ts";

/** A limit, and where it is written. How it is worded: at the limit is still in (`within`), or already out (`less-than`). */
export interface Limit<T extends number> {
  readonly limit: T;
  readonly edge: "within" | "less-than";
  readonly citation: string;
}

/** Null where the standard sets no limit. */
export interface TestStandard {
  readonly id: string;
  /** As in "US instrument rating". */
  readonly title: string;
  readonly citation: string;
  readonly course: {
    /** Needle, of full scale. */
    readonly needle: Limit<Share> | null;
    /** Where full scale is a distance: the needle may go this far for a short while, which the text does not measure. */
    readonly briefly: Limit<Share> | null;
    readonly altitude: Limit<Feet> | null;
  };
  readonly hold: {
    /** On the inbound course. */
    readonly needle: Limit<Share> | null;
    readonly altitude: Limit<Feet> | null;
  };
  readonly arc: {
    readonly distance: Limit<NauticalMiles> | null;
    readonly altitude: Limit<Feet> | null;
  };
}

const within = <T extends number>(limit: T, citation: string): Limit<T> => ({
  limit,
  edge: "within",
  citation,
});

const US = "FAA-S-ACS-8C";
const EU = "Part-FCL Appendix 7, flight test tolerances";

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
    },
    arc: {
      distance: within(1, `${US} V.A.S6: ±1 NM`),
      altitude: within(100, `${US} V.A.S5: ±100 ft`),
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
    },
    arc: {
      distance: null,
      altitude: within(100, `${EU}: ±100 ft`),
    },
  },
];
