/** What full-scale deflection of a course needle means, aid by aid: published numbers as data, no logic. */
import type { FullScale } from "../quantity/needle.ts";
import type { NauticalMiles } from "../quantity/units.ts";

export type NeedleScaleId = "vor" | "rnav-5" | "rnav-2" | "rnav-1" | "rnav-0.3" | "localizer";

export type NeedleScale = FullScale & {
  readonly id: NeedleScaleId;
  /** As written on a chart: "VOR, ±10°". */
  readonly label: string;
  readonly citation: string;
};

/** Nearer to a station than this an angular needle is not judged. Common practice, no source. */
export const NEAR_STATION: NauticalMiles = 1;

export const NEEDLE_SCALES: Readonly<Record<NeedleScaleId, NeedleScale>> = {
  vor: {
    id: "vor",
    kind: "angular",
    fullScaleDeg: 10,
    label: "VOR, ±10°",
    citation:
      "Five dots of 2°; 10° to 12° is accepted in the sensitivity check. Common practice; older FAA-H-8083-15A p. 7-11 says 12° or more",
  },
  "rnav-5": {
    id: "rnav-5",
    kind: "linear",
    fullScaleNm: 5,
    label: "RNAV en route, ±5 NM",
    citation: "FAA AIM 1-1-17 (TSO-C129, en route)",
  },
  "rnav-2": {
    id: "rnav-2",
    kind: "linear",
    fullScaleNm: 2,
    label: "RNAV en route, ±2 NM",
    citation: "TSO-C145/C146, en route, from memory",
  },
  "rnav-1": {
    id: "rnav-1",
    kind: "linear",
    fullScaleNm: 1,
    label: "RNAV terminal, ±1 NM",
    citation: "FAA AIM 1-1-17 (terminal)",
  },
  "rnav-0.3": {
    id: "rnav-0.3",
    kind: "linear",
    fullScaleNm: 0.3,
    label: "RNAV approach, ±0.3 NM",
    citation: "FAA AIM 1-1-17 (approach)",
  },
  localizer: {
    id: "localizer",
    kind: "angular",
    fullScaleDeg: 2.5,
    label: "Localizer, ±2.5°",
    citation:
      "FAA AIM 1-1-9 b.1: 700 ft wide at the threshold, 3° to 6° in all; ±2.5° where the width is not given",
  },
};
