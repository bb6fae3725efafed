/** The path as the matcher sees it: where it points, how far it goes and where it turns, with or without times. */
import { cosDeg, directionOf, turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import type {
  Degrees,
  FeetMsl,
  NauticalMiles,
  TrueDegrees,
  TurnDegrees,
  UtcMillis,
} from "../quantity/units.ts";
import type { Leg } from "../track/leg.ts";
import type { Column } from "../track/track.ts";

export interface FlownPath {
  /** Null where the log has no times. */
  readonly time: Column<UtcMillis> | null;
  readonly latitude: Column<Degrees>;
  readonly longitude: Column<Degrees>;
  /** Null: taken from successive points. */
  readonly trackAngle: Column<TrueDegrees> | null;
  /** Null: turns are taken from successive points. */
  readonly legs: readonly Leg[] | null;
  /** Needed to find descents, and to tell an approach from a leg beside it. */
  readonly altitude?: Column<FeetMsl>;
}

export interface Flown {
  readonly trackAngle: Column<TrueDegrees>;
  /** Distance flown from the first row. */
  readonly flown: Column<NauticalMiles>;
  readonly turns: readonly Turn[];
}

export interface Turn extends Span {
  readonly turn: TurnDegrees;
}

/** Half of the chord whose direction stands for the track: long against the noise of a portable GPS (a few metres), short against a turn. Chosen, not tuned. */
const HALF_CHORD_NM = 0.1;
/** A chord that turns this much over twice its half-length is in a turn: at 120 kt, 1.3° a second. Chosen, not tuned. */
const TURNING_DEG = 8;

export function flownOf(path: FlownPath): Flown {
  const flown = distances(path);
  const trackAngle = path.trackAngle ?? chordDirections(path, flown);
  const turns = path.legs
    ? path.legs.filter((leg) => leg.kind === "turn").map(({ span, turn }) => ({ ...span, turn }))
    : turnsOf(trackAngle, flown);
  return { trackAngle, flown, turns };
}

/** On a sphere of 60 NM to the degree, within 0.6 %: enough for weights and limits. */
function distances({ latitude, longitude }: FlownPath): Float64Array {
  const flown = new Float64Array(latitude.length);
  for (let i = 1; i < flown.length; i++) {
    flown[i] = flown[i - 1]! + Math.hypot(...offset(latitude, longitude, i - 1, i));
  }
  return flown;
}

/** East and north of one row from another, NM. */
function offset(latitude: Float64Array, longitude: Float64Array, from: number, to: number): [number, number] {
  const east = turnFrom(longitude[from]!, longitude[to]!) * cosDeg(latitude[from]!) * 60;
  return [east, (latitude[to]! - latitude[from]!) * 60];
}

function chordDirections({ latitude, longitude }: FlownPath, flown: Float64Array): Float64Array {
  const n = flown.length;
  const track = new Float64Array(n);
  let [behind, ahead] = [0, 0];
  for (let i = 0; i < n; i++) {
    while (behind < i && flown[i]! - flown[behind + 1]! >= HALF_CHORD_NM) behind++;
    while (ahead < n - 1 && (ahead <= i || flown[ahead]! - flown[i]! < HALF_CHORD_NM)) ahead++;
    track[i] = directionOf(...offset(latitude, longitude, behind, ahead));
  }
  return track;
}

function turnsOf(track: Float64Array, flown: Float64Array): Turn[] {
  const n = track.length;
  const turns: Turn[] = [];
  let [behind, ahead] = [0, 0];
  let open: { start: number; side: number } | null = null;
  const close = (end: number) => {
    if (!open) return;
    let turn = 0;
    for (let i = open.start + 1; i < end; i++) turn += turnFrom(track[i - 1]!, track[i]!);
    turns.push({ start: open.start, end, turn });
    open = null;
  };
  for (let i = 0; i < n; i++) {
    while (behind < i && flown[i]! - flown[behind + 1]! >= HALF_CHORD_NM) behind++;
    while (ahead < n - 1 && (ahead <= i || flown[ahead]! - flown[i]! < HALF_CHORD_NM)) ahead++;
    const change = turnFrom(track[behind]!, track[ahead]!);
    const side = Math.abs(change) >= TURNING_DEG ? Math.sign(change) : 0;
    if (open && side !== open.side) close(i);
    if (!open && side !== 0) open = { start: i, side };
  }
  close(n);
  return turns;
}

/** The turn that a row lies in, or null. */
export function turnAt(turns: readonly Turn[], row: number, atLeast: number): Turn | null {
  return turns.find((t) => t.start <= row && row < t.end && Math.abs(t.turn) >= atLeast) ?? null;
}
