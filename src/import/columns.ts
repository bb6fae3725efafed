/** The track's columns while they grow, point by point. */
import type { LogKind, Track } from "../track/track.ts";

/** Columns that a log may lack: made when the first value comes. */
export const OPTIONAL_COLUMNS = [
  "hdop",
  "satellites",
  "groundSpeed",
  "trackAngle",
  "headingTrue",
  "headingMagnetic",
  "trueAirspeed",
  "indicatedAirspeed",
  "pressureAltitude",
  "outsideAir",
  "positionSd",
] as const;
export type OptionalColumn = (typeof OPTIONAL_COLUMNS)[number];

/** Starts at 1024 rows (a short flight) and doubles, so that a point costs the same in a long log as in a short one. */
const FIRST_ROWS = 1024;

export class GrowingColumns {
  length = 0;
  private capacity = FIRST_ROWS;
  private time = new Float64Array(FIRST_ROWS);
  private latitude = new Float64Array(FIRST_ROWS);
  private longitude = new Float64Array(FIRST_ROWS);
  private altitude = new Float64Array(FIRST_ROWS);
  private segment = new Int32Array(FIRST_ROWS);
  private line = new Int32Array(FIRST_ROWS);
  private readonly optional = new Map<OptionalColumn, Float64Array>();
  private segmentNow = 0;
  private breakAhead = false;

  /** The recorder began anew: the next point opens another segment, unless it is the first of all. */
  breakHere(): void {
    this.breakAhead = true;
  }

  /** Adds a row. Units as in `Track`: ms, degrees, feet; NaN where the log has none. */
  push(time: number, latitude: number, longitude: number, altitude: number, line: number): void {
    const row = this.length;
    if (row === this.capacity) this.grow();
    if (this.breakAhead) {
      if (row > 0) this.segmentNow++;
      this.breakAhead = false;
    }
    this.time[row] = time;
    this.latitude[row] = latitude;
    this.longitude[row] = longitude;
    this.altitude[row] = altitude;
    this.segment[row] = this.segmentNow;
    this.line[row] = line;
    this.length = row + 1;
  }

  /** Sets a value of the row that was added last. */
  set(name: OptionalColumn, value: number): void {
    let column = this.optional.get(name);
    if (column === undefined) {
      column = new Float64Array(this.capacity).fill(Number.NaN);
      this.optional.set(name, column);
    }
    column[this.length - 1] = value;
  }

  /** The columns cut to their length; the growing ones are let go of. */
  finish(name: string, kind: LogKind): Track {
    const { length } = this;
    const optional: Partial<Record<OptionalColumn, Float64Array>> = {};
    for (const [column, values] of this.optional) optional[column] = values.slice(0, length);
    return {
      name,
      kind,
      length,
      time: this.time.slice(0, length),
      latitude: this.latitude.slice(0, length),
      longitude: this.longitude.slice(0, length),
      altitude: this.altitude.slice(0, length),
      segment: this.segment.slice(0, length),
      line: this.line.slice(0, length),
      ...optional,
    };
  }

  private grow(): void {
    this.capacity *= 2;
    const wider = (column: Float64Array): Float64Array<ArrayBuffer> => {
      const next = new Float64Array(this.capacity);
      next.set(column);
      return next;
    };
    const widerInt = (column: Int32Array): Int32Array<ArrayBuffer> => {
      const next = new Int32Array(this.capacity);
      next.set(column);
      return next;
    };
    this.time = wider(this.time);
    this.latitude = wider(this.latitude);
    this.longitude = wider(this.longitude);
    this.altitude = wider(this.altitude);
    this.segment = widerInt(this.segment);
    this.line = widerInt(this.line);
    for (const [name, column] of this.optional) {
      this.optional.set(name, wider(column).fill(Number.NaN, this.length));
    }
  }
}
