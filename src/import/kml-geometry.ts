/** The geometries of KML: coordinates, height modes, and the parallel lists of a timed track. */
import { METRES_PER_FOOT } from "../quantity/factor.ts";
import { readDecimal } from "./decimal.ts";
import { OddTimeReader } from "./odd-time.ts";
import type { Place, Tally } from "./tally.ts";

/** Longitude, latitude in degrees, height in metres; NaN where not written. */
export interface Coordinate {
  readonly latitude: number;
  readonly longitude: number;
  readonly height: number;
}

const number = (text: string | undefined): number =>
  text === undefined || text === "" ? Number.NaN : readDecimal(text);

/** One tuple "lon,lat" or "lon,lat,alt" (KML 2.2, kml:coordinates); of more numbers, grown together, none is known. */
function commaTuple(text: string): Coordinate {
  const [longitude, latitude, height, more] = text.split(",");
  if (more !== undefined) return { latitude: Number.NaN, longitude: Number.NaN, height: Number.NaN };
  return { latitude: number(latitude), longitude: number(longitude), height: number(height) };
}

/** One `gx:coord`: "lon lat alt", divided by spaces (KML 2.2 extensions, gx:coord), or by commas as some programs write; it may be empty. */
export function spaceTuple(text: string): Coordinate {
  const [longitude, latitude, height] = text.trim().split(/[\s,]+/);
  return { latitude: number(latitude), longitude: number(longitude), height: number(height) };
}

/** Tuples written "lon, lat, alt" against the rule: the first, cut at its space, has no latitude. */
const spacedOut = (text: string): boolean => /^\s*[-+\d.]+\s*,[ \t]+[-+\d]/.test(text);

/** A geometry while it is read. Its height mode may come before or after its coordinates. */
export class Geometry {
  readonly coordinates: Coordinate[] = [];
  readonly times: number[] = [];
  readonly lines: number[] = [];
  /** Values beside the coordinates, the nth of each to the nth. */
  readonly arrays = new Map<"groundSpeed" | "trackAngle", number[]>();
  mode = "clampToGround"; // the default (KML 2.2, kml:altitudeMode)

  /** Tuples divided by white space; each knows its own line, counted from that of the element. */
  addTuples(written: string, firstLine: number): void {
    const text = spacedOut(written) ? written.replace(/[ \t]*,[ \t]*/g, ",") : written;
    let line = firstLine;
    let start = -1;
    for (let i = 0; i <= text.length; i++) {
      const c = i < text.length ? text.charCodeAt(i) : 32;
      if (c === 32 || (c >= 9 && c <= 13)) {
        if (start >= 0) {
          this.coordinates.push(commaTuple(text.slice(start, i)));
          this.lines.push(line);
          start = -1;
        }
        if (c === 10) line++;
      } else if (start < 0) start = i;
    }
  }

  /**
   * Heights in feet. `absolute` is above mean sea level (EGM96). `relativeToGround` needs the terrain: unknown, and
   * counted (`height-above-ground`). `clampToGround` tells viewers to ignore the height, yet loggers write true
   * ones beneath it: kept, and noted (`height-mode-ground`), unless all are zero, which is a filler: unknown. No tally: nothing is said.
   */
  heights(tally: Tally | null, place: Place): Float64Array {
    const { coordinates } = this;
    const feet = Float64Array.from(coordinates, (c) => c.height / METRES_PER_FOOT);
    if (this.mode === "absolute") return feet;
    const some = feet.some((h) => h !== 0 && !Number.isNaN(h));
    if (this.mode.startsWith("relative") || !some) feet.fill(Number.NaN);
    if (some) {
      const code = this.mode.startsWith("relative") ? "height-above-ground" : "height-mode-ground";
      tally?.add(code, "note", place, { facts: { mode: this.mode.slice(0, 40) } });
    }
    return feet;
  }
}

/** Names of arrays in `ExtendedData` without case, spaces and signs (common practice, no source). A plain heading may be either. */
const ARRAYS: Readonly<Record<string, "groundSpeed" | "trackAngle">> = {
  speed: "groundSpeed",
  groundspeed: "groundSpeed",
  gpsspeed: "groundSpeed",
  course: "trackAngle",
  bearing: "trackAngle",
  track: "trackAngle",
};
export const arrayNamed = (name: string): "groundSpeed" | "trackAngle" | null => {
  const bare = name.toLowerCase().replace(/[^a-z]/g, "");
  return Object.hasOwn(ARRAYS, bare) ? ARRAYS[bare]! : null;
};

/** Reads `when` texts. A date, a month or a year alone (KML 2.2, kml:dateTime) is no time of a fix: NaN. */
export class WhenReader {
  private readonly times = new OddTimeReader();
  private readonly tally: Tally;
  constructor(tally: Tally) {
    this.tally = tally;
  }
  read(text: string, place: Place): number {
    const time = this.times.read(text);
    if (!Number.isNaN(time)) {
      if (!this.times.zoned) this.tally.add("time-without-zone", "note", place);
    } else if (text.trim() !== "") {
      this.tally.add("unreadable-time", "warning", place, { facts: { time: text.trim().slice(0, 40) } });
    }
    return time;
  }
}
