/** What a table's column headings mean: the quantity and its unit, in common spellings. */
import { METRES_PER_FOOT, METRES_PER_SECOND_PER_KNOT, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import { CSV_COLUMNS, type CsvColumn } from "./imported.ts";

/** Spellings without case, spaces, signs and units (common practice, no source). */
const SPELLINGS: Readonly<Record<CsvColumn, readonly string[]>> = {
  latitude: ["lat", "latitude", "gpslat", "gpslatitude", "latitudewgs84"],
  longitude: ["lon", "lng", "long", "longitude", "gpslon", "gpslong", "gpslongitude", "longitudewgs84"],
  altitude: [
    ...["alt", "altitude", "ele", "elevation", "height", "altmsl", "altitudemsl", "heightmsl", "mslaltitude"],
    ...["gpsalt", "gpsaltitude", "altgps", "altitudegps", "gpsheight"],
  ],
  pressureAltitude: [
    "pressurealtitude",
    "pressurealt",
    "palt",
    "altpress",
    "altpressure",
    "altstd",
    "presalt",
  ],
  time: [
    "time",
    "timestamp",
    "datetime",
    "utc",
    "utctime",
    "timeutc",
    "gpstime",
    "datetimeutc",
    "lcltime",
    "localtime",
    "elapsed",
    "elapsedtime",
    "timeelapsed",
    "timesincestart",
    "epoch",
    "unixtime",
  ],
  date: ["date", "utcdate", "dateutc", "gpsdate", "lcldate", "localdate"],
  utcOffset: ["utcofst", "utcoffset"],
  groundSpeed: [
    "groundspeed",
    "gs",
    "speed",
    "gndspd",
    "gspd",
    "sog",
    "gpsspeed",
    "speedgps",
    "speedoverground",
  ],
  trackAngle: [
    "track",
    "trk",
    "cog",
    "courseoverground",
    "truetrack",
    "tracktrue",
    "gpstrack",
    "groundtrack",
    "bearing",
  ],
  headingTrue: ["trueheading", "headingtrue", "hdgtrue", "truehdg"],
  headingMagnetic: [
    "magneticheading",
    "magheading",
    "headingmagnetic",
    "headingmag",
    "hdgmag",
    "maghdg",
    "hdgm",
  ],
  trueAirspeed: ["tas", "trueairspeed"],
  indicatedAirspeed: ["ias", "indicatedairspeed"],
  outsideAir: ["oat", "outsideair", "outsideairtemp", "outsideairtemperature"],
  hdop: ["hdop"],
};

/** A heading that says neither true nor magnetic, and may be a track: not used unless named by option. */
const UNCLEAR = new Set(["heading", "hdg", "course", "direction"]);

type Kind = "height" | "speed" | "temperature" | "time";
const KINDS: Partial<Record<CsvColumn, Kind>> = {
  altitude: "height",
  pressureAltitude: "height",
  groundSpeed: "speed",
  trueAirspeed: "speed",
  indicatedAirspeed: "speed",
  outsideAir: "temperature",
  time: "time",
};

const same = (x: number): number => x;
const UNITS: Readonly<Record<Kind, Readonly<Record<string, (x: number) => number>>>> = {
  height: {
    ft: same,
    feet: same,
    m: (x) => x / METRES_PER_FOOT,
    meters: (x) => x / METRES_PER_FOOT,
    metres: (x) => x / METRES_PER_FOOT,
  },
  speed: {
    kt: same,
    kts: same,
    knots: same,
    kn: same,
    ms: (x) => x / METRES_PER_SECOND_PER_KNOT,
    mps: (x) => x / METRES_PER_SECOND_PER_KNOT,
    kmh: (x) => x / 3.6 / METRES_PER_SECOND_PER_KNOT,
    kph: (x) => x / 3.6 / METRES_PER_SECOND_PER_KNOT,
    mph: (x) => (x * 0.44704) / METRES_PER_SECOND_PER_KNOT, // exactly, from the foot and mile
  },
  temperature: { c: same, degc: same, f: (x) => (x - 32) / 1.8, degf: (x) => (x - 32) / 1.8 },
  // Of times only numbers without a date have a unit: to milliseconds.
  time: { s: (x) => x * 1000, sec: (x) => x * 1000, seconds: (x) => x * 1000, ms: same },
};
/** Where the heading is silent: what aircraft show, except heights that surveyors and receivers name so. */
const ASSUMED: Readonly<Record<Exclude<Kind, "time">, string>> = {
  height: "ft",
  speed: "kt",
  temperature: "c",
};
const PLACE = new Set<CsvColumn>(["latitude", "longitude"]);
const METRIC_NAMES = new Set(["ele", "elevation", "height", "gpsheight"]);

export interface Meaning {
  readonly column: CsvColumn;
  readonly heading: string;
  readonly convert: (value: number) => number;
  /** The unit that was taken because none was written; null where it was, or none is needed. */
  readonly assumed: string | null;
  /** Of times: whether the heading names a unit, so that numbers count from some start. */
  readonly counts: boolean;
}

/** Without case, spaces and signs. */
export const bare = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, "");

/** Heading and unit: "Alt (ft)", "alt [ft]", "alt_ft", "Alt, ft", "altitudeFt". */
export function nameAndUnit(written: string): { readonly name: string; readonly unit: string } {
  const heading = written.replace(/([a-z])([A-Z])/g, "$1 $2");
  const marked = /^(.*?)[([{](.*?)[)\]}]/.exec(heading);
  if (marked !== null) return { name: bare(marked[1]!), unit: bare(marked[2]!) };
  const tail =
    /^(.+)[ _.,/-]+(ft|feet|m|meters|metres|kts?|knots|ms|mps|m\/s|km\/?h|kph|mph|deg|rad|degc|c|f|s|sec|seconds)$/i.exec(
      heading.trim(),
    );
  return tail === null ? { name: bare(heading), unit: "" } : { name: bare(tail[1]!), unit: bare(tail[2]!) };
}

/** The meaning of a heading, "unclear" for one that may mean several, null for an unknown one. */
export function meaningOf(
  heading: string,
  unitBelow = "",
  chosen: CsvColumn | null = null,
): Meaning | "unclear" | null {
  const { name, unit: own } = nameAndUnit(heading);
  const known = CSV_COLUMNS.find((column) => SPELLINGS[column].includes(name));
  const column = chosen ?? known;
  if (column === undefined) return UNCLEAR.has(name) ? "unclear" : null;
  const kind = KINDS[column];
  const plain = { column, heading, convert: same, assumed: null, counts: false };
  const written = own || bare(unitBelow);
  if (kind === undefined) {
    return PLACE.has(column) && /^rad(?:ians?)?$/.test(written)
      ? { ...plain, convert: (x) => x / RADIANS_PER_DEGREE }
      : plain;
  }
  const units = UNITS[kind];
  if (Object.hasOwn(units, written)) return { ...plain, convert: units[written]!, counts: kind === "time" };
  if (kind === "time") return plain;
  const assumed = kind === "height" && METRIC_NAMES.has(name) ? "m" : ASSUMED[kind];
  return { ...plain, convert: units[assumed]!, assumed };
}
