/** The door of the track wing: the recorded flight cleaned, its smoothed motion, and its straights and turns. */
export type { AgainstCourse } from "./against-course.ts";
export { airborneRows } from "./airborne.ts";
export {
  type CausedExcursion,
  type Correction,
  causeFindings,
  causesOf,
  windCause,
  worstCauses,
} from "./cause.ts";
export { type CleanedTrack, cleanTrack } from "./clean.ts";
export { type DescentFound, descentAfter, descentBefore } from "./descent.ts";
export { descentPoint, rowBefore } from "./descent-point.ts";
export type { AlongLine, ExcursionRows } from "./excursion.ts";
export { findExcursions } from "./find-excursions.ts";
export { TRACK_OFF } from "./first-correction.ts";
export { type Flight, findFlights } from "./flights.ts";
export {
  altimeterDoubt95,
  altimeterOff95,
  HEIGHT_CHANGE_95,
  PRESSURE_HEIGHT_95,
  RECEIVER_HEIGHT_95,
} from "./height-doubt.ts";
export { heightHeld, heightReached } from "./height-held.ts";
export {
  ESTABLISHED_NEEDLE,
  ESTABLISHED_TRACK,
  establishedRow,
  type Intercept,
  isCut,
  measureIntercept,
} from "./intercept.ts";
export {
  arrivedRow,
  findJoining,
  type Joining,
  joiningRecord,
  NEARLY_ALONG,
  turnedFindings,
  wentOnFacts,
} from "./joining.ts";
export { findLegs } from "./legs.ts";
export { passageRow } from "./passage.ts";
export { pathLength } from "./path-length.ts";
export { SLOW_POSITION_SD } from "./position-doubt.ts";
export { chasedFinding, countReversals, type Reversals, reversalsRecord, turningPoints } from "./reversal.ts";
export { turnedPast } from "./roll-out.ts";
export { cutTrack } from "./rows.ts";
export { smoothTrack } from "./smooth.ts";
export { steadyFrom } from "./steady.ts";
export { taxiSpeed } from "./taxi.ts";
export { excursionFinding, isTold, toldExcursions } from "./told-excursion.ts";
export type { Column, LogKind, Track } from "./track.ts";
export { ofOneWind, weaveOf } from "./weave.ts";
export { withCut } from "./with-cut.ts";
