/** GPX 1.0 and 1.1: the recorded points of all tracks and segments, straight from the stream into columns. */
import { GrowingColumns } from "./columns.ts";
import { GpxPoint, type PointElement } from "./gpx-point.ts";
import type { Found, XmlLogReader } from "./log-reader.ts";
import { PlaceCutter } from "./places.ts";
import { plausibleSpeeds } from "./plausible.ts";
import type { Tally } from "./tally.ts";
import { segmentsInOrder } from "./time-order.ts";
import type { XmlStream } from "./xml-stream.ts";

type Wanted = PointElement | "name" | null;

/**
 * Read of each `trkpt`: `lat`, `lon` (degrees, WGS84), `ele` (metres, datum not stated), `time`, `hdop`, `fix`;
 * `speed` (m/s) and `course` (degrees true), the point's own in 1.0 or in `extensions` at any depth in 1.1.
 * Speeds that do not fit the way flown are refused (`implausible-column`): some programs write other units.
 * Of values written twice the first counts. A negative speed or course is a receiver's "not known".
 * Left out and counted: a point without readable place (`unreadable-position`), and one whose `fix` is `none`
 * (`point-without-fix`: the receiver says that it had none).
 * Kept without the value and counted: `unreadable-time`, `unreadable-value`. Noted: `time-without-zone` (taken as UTC).
 * Source: Topografix, GPX 1.1 Schema (gpx.xsd), wptType; GPX 1.0 by its use.
 */
export class GpxReader implements XmlLogReader {
  private name = "";
  private pointsSeen = 0;
  /** Depth of the open `trkpt`, 0 when none is. */
  private pointDepth = 0;
  private extensionsDepth = 0;
  private wanted: Wanted = null;
  private wantedDepth = 0;
  private value = "";
  private inTrack = false;
  private nameOfTrack = false;
  private readonly at: XmlStream;
  private readonly point: GpxPoint;
  private readonly columns = new GrowingColumns();
  private readonly places: PlaceCutter;
  private readonly tally: Tally;

  constructor(at: XmlStream, tally: Tally) {
    this.at = at;
    this.point = new GpxPoint(at, tally);
    this.places = new PlaceCutter(tally);
    this.tally = tally;
  }

  open(name: string, attributes: Readonly<Record<string, string>>, depth: number): void {
    switch (name) {
      case "trkpt":
        this.leave();
        this.pointDepth = depth;
        this.pointsSeen++;
        this.point.begin(attributes);
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
    const { pointsSeen, tally } = this;
    const ordered = segmentsInOrder(this.columns.finish(this.name || file, "gpx"), tally);
    const track = plausibleSpeeds(ordered, tally);
    return { track, pointsSeen, ...this.places.finish() };
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
        case "sat":
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
    } else if (wanted !== null) this.point.take(wanted, value);
  }

  private endPoint(): void {
    this.pointDepth = 0;
    this.extensionsDepth = 0;
    this.point.pushTo(this.columns);
  }
}
