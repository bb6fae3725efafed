/** A hold as a pilot types it, read: courses, winds and times of the trade in, a question for the solver out. */
import {
  DIRECTION_PATTERN,
  HOLD_LEG_PATTERN,
  readDirection,
  readHoldLeg,
  type WrittenDirection,
} from "../brief/index.ts";
import { direction, turnFrom } from "../quantity/angle.ts";
import type { FeetMsl } from "../quantity/units.ts";
import { HOLDING, type HoldingStandard } from "../standard/holding.ts";
import { bandAt } from "./asked.ts";
import type { HoldLeg } from "./racetrack-question.ts";
import { type Range, type TypedFields, typedFields } from "./typed-fields.ts";
import type { ReadHold, TypedHold } from "./typed-hold.ts";

/** Wide enough for whatever holds; what is outside is a slip of the pen. Chosen. */
const RANGES = {
  tas: { least: 30, most: 600, unit: "kt" },
  wind: { least: 0, most: 300, unit: "kt" },
  altitude: { least: -2000, most: 60_000, unit: "ft" },
  bank: { least: 5, most: 45, unit: "°" },
  rate: { least: 0.5, most: 6, unit: "°/s" },
  windDoubt: { least: 0, most: 100, unit: "kt" },
  variation: { least: 0, most: 180, unit: "°" },
  seconds: { least: 10, most: 600, unit: "s" },
  distance: { least: 0.5, most: 25, unit: "NM" },
} as const satisfies Record<string, Range>;

const WIND = /^(\d{1,3}(?:\.\d+)?\s*°?\s*[TM]?)\s*[/@ ]\s*(\d+(?:\.\d+)?)\s*(?:kts?)?$/i;
const CALM = /^(calm|0+(\s*\/\s*0+)?)\s*(kts?)?$/i;
const VARIATION = /^(\d+(?:\.\d+)?)\s*°?\s*([EW])$/i;

function readLeg(fields: TypedFields, standard: HoldingStandard, altitude: FeetMsl | null): HoldLeg | null {
  const by = standard.timed === "inbound" ? "inbound-time" : "outbound-clock";
  const text = fields.written("leg");
  if (text === null) return { by, seconds: bandAt(standard, altitude).legTime };
  if (!HOLD_LEG_PATTERN.test(text)) return fields.unreadable("leg");
  const read = readHoldLeg(text);
  if (read.by === "distance")
    return fields.within("leg", read.distance, RANGES.distance) === null ? null : read;
  return fields.within("leg", read.seconds, RANGES.seconds) === null ? null : { by, seconds: read.seconds };
}

interface TypedWind {
  readonly from: number;
  /** Null where no letter says it. */
  readonly reference: WrittenDirection["reference"] | null;
  readonly speed: number;
}

function readWind(fields: TypedFields): TypedWind | null {
  const text = fields.must("wind");
  if (text === null) return null;
  if (CALM.test(text)) return { from: 0, reference: null, speed: 0 };
  const [, from, kt] = WIND.exec(text) ?? [];
  if (from === undefined || !DIRECTION_PATTERN.test(from)) return fields.unreadable("wind");
  const speed = fields.within("wind", Number(kt), RANGES.wind);
  const { degrees, reference } = readDirection(from);
  return speed === null ? null : { from: degrees, reference: /[TM]$/i.test(from) ? reference : null, speed };
}

/** Degrees east; null where nothing is written, or nothing that can be read. */
function readVariation(fields: TypedFields, field: "variation" | "declination"): number | null {
  const text = fields.written(field);
  if (text === null || text === "0") return text && 0;
  const [, size, letter] = VARIATION.exec(text) ?? [];
  if (size === undefined) return fields.unreadable(field);
  const east = fields.within(field, Number(size), RANGES.variation);
  return east && east * (letter?.toUpperCase() === "W" ? -1 : 1);
}

/** What a compass reads more than the course of a station says; 0 where no declination is given, or the course is true. */
function compassOver(fields: TypedFields, { reference }: WrittenDirection, variation: number | null): number {
  const declination = readVariation(fields, "declination");
  if (declination === null || reference === "true" || fields.must("variation") === null) return 0;
  return turnFrom(variation ?? 0, declination);
}

/** Where the wind comes from, in the reference of the course; null where that takes a variation that is not there. */
function windInReference(
  fields: TypedFields,
  wind: TypedWind,
  inbound: WrittenDirection,
  east: number | null,
): number | null {
  const { reference } = wind;
  if (reference === null || reference === inbound.reference) return wind.from;
  if (fields.written("variation") === null)
    return fields.refuse("wind", "hold-mixed-references", { course: inbound.reference, wind: reference });
  if (east === null) return null;
  return direction(wind.from + (inbound.reference === "true" ? east : -east));
}

/** Reads all fields and tells all that is wrong at once. */
export function readHold(typed: TypedHold): ReadHold {
  const fields = typedFields(typed);
  const { issues } = fields;
  const text = fields.must("inbound");
  if (text !== null && !DIRECTION_PATTERN.test(text)) fields.unreadable("inbound");
  const inbound = text !== null && DIRECTION_PATTERN.test(text) ? readDirection(text) : null;
  const tas = fields.must("tas") === null ? null : fields.amount("tas", RANGES.tas, /kts?$/i);
  const turns = fields.choice("turns", ["right", "left"]);
  const timing = fields.choice("timing", ["us", "icao"]);
  const standard = HOLDING[timing];
  const altitude = fields.amount("altitude", RANGES.altitude, /ft$/i);
  const bank = fields.amount("bank", RANGES.bank, /°|deg$/i);
  const rate = fields.amount("rate", RANGES.rate, /°\/s$/i);
  const wind95 = fields.amount("windDoubt", RANGES.windDoubt, /kts?$/i);
  const leg = readLeg(fields, standard, altitude);
  const wind = readWind(fields);
  const variation = readVariation(fields, "variation");
  const compassDeg = inbound ? compassOver(fields, inbound, variation) : 0;
  const from = wind && inbound && windInReference(fields, wind, inbound, variation);
  if (issues.length > 0 || !inbound || tas === null || !wind || !leg || from === null)
    return { asked: null, issues };
  const asked = {
    reference: inbound.reference,
    inboundDeg: inbound.degrees,
    turns,
    trueAirspeedKt: tas,
    windFromDeg: wind.speed === 0 ? inbound.degrees : from,
    compassDeg,
    windKt: wind.speed,
    wind95Kt: wind95,
    timing,
    leg,
    legGiven: fields.written("leg") !== null,
    altitudeFt: altitude,
    turnRateDegS: rate ?? standard.turnRate,
    mostBankDeg: bank ?? standard.mostBank,
  };
  return { asked, issues };
}
