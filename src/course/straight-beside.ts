/** What was flown in place of a course: one straight track, beside it or across it at a small angle. */
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, NauticalMiles, Share } from "../quantity/units.ts";
import { evidence } from "./finding.ts";
import type { Rows } from "./path.ts";

/** Flown for so far, it was meant. Chosen: two minutes at 90 kt. */
const FLOWN: NauticalMiles = 3;
/** Straight: within this of one line, by its largest. Chosen: hand-flown wander is less. */
const STRAIGHT: NauticalMiles = 0.15;
/** Beside the course, it stood off all along by so much, and past so much of full scale at its worst. Chosen: more than any needle that is called tidy. */
const BESIDE: NauticalMiles = 0.25;
const PAST: Share = 0.75;
/** More than this across the course is on the way to somewhere else, and no try at it. Chosen: half of a usual cut. */
const ACROSS: AngleSize = 15;

/** Told of one that was never established on, and of one that stood off to one side all along; of others nothing. */
export function straightBeside(rows: Rows, judged: Span, neverEstablished: boolean): Finding[] {
  const { alongNm: along, crossTrackNm: across } = rows;
  const [first, last] = [judged.start, judged.end - 1];
  const made = along[last]! - along[first]!;
  if (!(made >= FLOWN)) return [];
  const slope = (across[last]! - across[first]!) / made;
  let [sum, least, most] = [0, Number.POSITIVE_INFINITY, 0];
  for (let i = first; i <= last; i++) {
    if (Math.abs(across[i]! - across[first]! - slope * (along[i]! - along[first]!)) > STRAIGHT) return [];
    sum += across[i]!;
    least = Math.min(least, Math.abs(across[i]!));
    most = Math.max(most, Math.abs(rows.needle[i]!));
  }
  const degrees = Math.atan(slope) * DEGREES_PER_RADIAN;
  const oneSide = across[first]! * across[last]! > 0 && least >= BESIDE;
  if (Math.abs(degrees) > ACROSS || !(neverEstablished || (oneSide && most > PAST))) return [];
  const facts = {
    offDeg: degrees,
    fromNm: across[first]!,
    toNm: across[last]!,
    meanNm: sum / (judged.end - judged.start),
  };
  return [{ code: "straight-beside", facts, evidence: evidence(rows, judged) }];
}
