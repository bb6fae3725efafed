/** GPX 1.0 and 1.1: the recorded points of all tracks and segments, straight from the stream into columns. */
import { direction } from "../quantity/angle.ts";
import { feetFromMetres, knotsFromMetresPerSecond } from "../quantity/factor.ts";
import { GrowingColumns, type OptionalColumn } from "./columns.ts";
import { readDecimal } from "./decimal.ts";
import { IsoTimeReader } from "./iso-time.ts";
import type { Found, XmlLogReader } from "./log-reader.ts";
import { PlaceCutter } from "./places.ts";
import type { Tally } from "./tally.ts";
import type { XmlStream } from "./xml-stream.ts";

type Wanted = "ele" | "time" | "hdop" | "speed" | "course" | "fix" | "name" | null;

/**
 * Read of each `trkpt`: `lat`, `lon` (degrees, WGS84), `ele` (metres, datum not stated), `time`, `hdop`, `fix`;
 * `speed` (m/s) and `course` (degrees true), the point's own in 1.0 or in `extensions` at any depth in 1.1.
 * Of values written twice the first counts. A negative speed or course is a receiver's "not known".
 * Left out and counted: a point without readable place (`unreadable-position`), and one whose `fix` is `none`
 * (`point-without-fix`: the receiver says that it had none).
 * Kept without the value and counted: `unreadable-time`, `unreadable-value`. Noted: `time-without-zone` (taken as UTC).
 * Source: Topografix, GPX 1.1 Schema (gpx.xsd), wptType; GPX 1.0 by its use.
 */
export class GpxReader implements XmlLogReader {
  private name = "";
  private pointsSeen = 0;
  private readonly times = new IsoTimeReader();
  /** Depth of the open `trkpt`, 0 when none is. */
  private pointDepth = 0;
  private extensionsDepth = 0;
  private wanted: Wanted = null;
  private wantedDepth = 0;
  private value = "";
  private pointLine = 0;
  private latitude = Number.NaN;
  private longitude = Number.NaN;
  private altitude = Number.NaN;
  private time = Number.NaN;
  private hdop = Number.NaN;
  private speed = Number.NaN;
  private course = Number.NaN;
  private fixed = true;
  private inTrack = false;
  private nameOfTrack = false;
  private readonly at: XmlStream;
  private readonly columns = new GrowingColumns();
  private readonly places: PlaceCutter;
  private readonly tally: Tally;

  constructor(at: XmlStream, tally: Tally) {
    this.at = at;
    this.places = new PlaceCutter(tally);
    this.tally = tally;
  }

  open(name: string, attributes: Readonly<Record<string, string>>, depth: number): void {
    switch (name) {
      case "trkpt":
        this.leave();
        this.beginPoint(attributes, depth);
        return;
      case "trkseg":
      case "trk":
        this.leave();
        this.columns.breakHere();
        if (name === "trk") this.inTrack = true;
        return;
      case "wpt":
      case "rte":
        this.leave();
        this.places.begin(name, attributes, depth, this.at.place());
        return;
    }
    if (this.places.busy) this.places.open(name, attributes, depth);
    else if (this.pointDepth > 0) this.openInPoint(name, depth);
    else if (name === "name" && (this.name === "" || (this.inTrack && !this.nameOfTrack))) {
      this.want("name", depth);
    }
  }

  text(text: string): void {
    if (this.wanted !== null) this.value += text;
    else if (this.places.busy) this.places.text(text);
  }

  close(name: string, depth: number): void {
    if (this.wanted !== null && depth === this.wantedDepth) this.take();
    if (this.places.busy) this.places.close(depth);
    else if (depth === this.pointDepth) this.endPoint();
    else if (depth === this.extensionsDepth) this.extensionsDepth = 0;
    else if (name === "trk") this.inTrack = false;
  }

  end(): void {
    this.leave();
  }

  finish(file: string): Found {
    const { pointsSeen } = this;
    return { track: this.columns.finish(this.name || file, "gpx"), pointsSeen, ...this.places.finish() };
  }

  /** A point or place that was never closed ends where the next part of the file begins. */
  private leave(): void {
    this.wanted = null;
    if (this.places.busy) this.places.end();
    if (this.pointDepth > 0) this.endPoint();
  }

  private want(wanted: Wanted, depth: number): void {
    this.wanted = wanted;
    this.wantedDepth = depth;
    this.value = "";
  }

  private beginPoint(attributes: Readonly<Record<string, string>>, depth: number): void {
    this.pointDepth = depth;
    this.extensionsDepth = 0;
    this.wanted = null;
    this.pointLine = this.at.line;
    this.latitude = attributes.lat === undefined ? Number.NaN : readDecimal(attributes.lat);
    this.longitude = attributes.lon === undefined ? Number.NaN : readDecimal(attributes.lon);
    this.altitude = this.time = this.hdop = this.speed = this.course = Number.NaN;
    this.fixed = true;
    if (Number.isNaN(this.latitude) || Number.isNaN(this.longitude)) {
      const facts = { lat: attributes.lat?.slice(0, 40) ?? null, lon: attributes.lon?.slice(0, 40) ?? null };
      this.tally.add("unreadable-position", "warning", this.at.place(this.pointsSeen), { dropped: 1, facts });
    }
    this.pointsSeen++;
  }

  private openInPoint(name: string, depth: number): void {
    if (this.extensionsDepth > 0) {
      if (name === "speed") this.want("speed", depth);
      else if (name === "course" || name === "bearing") this.want("course", depth);
    } else if (depth === this.pointDepth + 1) {
      switch (name) {
        case "ele":
        case "time":
        case "hdop":
        case "speed":
        case "course":
        case "fix":
          this.want(name, depth);
          break;
        case "extensions":
          this.extensionsDepth = depth;
      }
    }
  }

  /** The text of a wanted element is complete. */
  private take(): void {
    const { wanted, value } = this;
    this.wanted = null;
    if (wanted === "name") {
      const name = value.trim();
      if (name !== "") {
        this.name = name;
        this.nameOfTrack = this.inTrack;
      }
    } else if (wanted === "fix") {
      if (value.trim() === "none") this.fixed = false;
    } else if (wanted === "time") {
      if (Number.isNaN(this.time)) this.takeTime(value);
    } else if (wanted !== null) this.takeNumber(wanted, value);
  }

  private takeTime(value: string): void {
    const time = this.times.read(value);
    if (!Number.isNaN(time)) {
      this.time = time;
      if (!this.times.zoned) this.tally.add("time-without-zone", "note", this.at.place(this.pointsSeen - 1));
    } else if (value.trim() !== "") {
      this.tally.add("unreadable-time", "warning", this.at.place(this.pointsSeen - 1), {
        facts: { time: value.trim().slice(0, 40) },
      });
    }
  }

  private takeNumber(wanted: "ele" | "hdop" | "speed" | "course", value: string): void {
    const number = readDecimal(value);
    if (Number.isNaN(number)) {
      if (value.trim() === "") return;
      const facts = { element: wanted, value: value.trim().slice(0, 40) };
      this.tally.add("unreadable-value", "warning", this.at.place(this.pointsSeen - 1), {
        facts,
        detail: wanted,
      });
    } else if (wanted === "ele") {
      if (Number.isNaN(this.altitude)) this.altitude = feetFromMetres(number);
    } else if (wanted === "hdop") {
      if (Number.isNaN(this.hdop)) this.hdop = number;
    } else if (wanted === "speed") {
      if (Number.isNaN(this.speed) && number >= 0) this.speed = knotsFromMetresPerSecond(number);
    } else if (Number.isNaN(this.course) && number >= 0) this.course = direction(number);
  }

  private endPoint(): void {
    this.pointDepth = 0;
    this.extensionsDepth = 0;
    if (Number.isNaN(this.latitude) || Number.isNaN(this.longitude)) return; // counted when it began
    if (!this.fixed) {
      const place = { line: this.pointLine, column: 0, point: this.pointsSeen - 1 };
      this.tally.add("point-without-fix", "warning", place, { dropped: 1 });
      return;
    }
    const { columns } = this;
    columns.push(this.time, this.latitude, this.longitude, this.altitude, this.pointLine);
    this.put("hdop", this.hdop);
    this.put("groundSpeed", this.speed);
    this.put("trackAngle", this.course);
  }

  private put(column: OptionalColumn, value: number): void {
    if (!Number.isNaN(value)) this.columns.set(column, value);
  }
}
