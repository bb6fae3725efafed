/** The clock of a hold's outbound leg: started abeam the fix or at wings level, whichever is later. */
import type { Seconds } from "./units.ts";

/** From the turn's end, and from abeam the fix where that is known. */
export interface OutboundTimes {
  readonly outboundS: Seconds;
  readonly outboundFromAbeamS: Seconds | null;
}

export interface OutboundClock {
  /** What it shows at the leg's end: the shorter of the two times. */
  readonly seconds: Seconds;
  readonly begins: "wings-level" | "abeam";
}

/** AIM 5-3-8 j 5 and ICAO Doc 8168: over or abeam the fix, whichever occurs later, or from wings level where abeam cannot be told. */
export const outboundClock = ({ outboundS, outboundFromAbeamS }: OutboundTimes): OutboundClock =>
  outboundFromAbeamS !== null && outboundFromAbeamS < outboundS
    ? { seconds: outboundFromAbeamS, begins: "abeam" }
    : { seconds: outboundS, begins: "wings-level" };
