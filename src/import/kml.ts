/** KML 2.2: timed tracks, timed placemarks, or bare lines, whichever tells most of the flight. */

import { readDecimal } from "./decimal.ts";
import type { Waypoint } from "./imported.ts";
import { arrayNamed, Geometry, spaceTuple, WhenReader } from "./kml-geometry.ts";
import { KmlSource } from "./kml-source.ts";
import type { Found, XmlLogReader } from "./log-reader.ts";
import { speedsByWay } from "./plausible.ts";
import type { Tally } from "./tally.ts";
import { inTimeOrder, segmentsInOrder } from "./time-order.ts";
import type { XmlStream } from "./xml-stream.ts";

/**
 * Read, the best kind that the file has: `Track` (in a `MultiTrack` or not; each is a segment; the nth `when`
 * belongs to the nth `coord`), else placemarks with a `Point` and a `TimeStamp` (or a `TimeSpan`'s `begin`), else
 * the points of each `LineString`, without times. What else of these kinds there is, is noted (`unused-geometry`).
 * Placemarks with a point and no time are places. Names come from the placemark, else the document.
 * Counted: `unreadable-position` (an empty `coord` too), `track-lists-differ` (more `when` than `coord`: those are
 * left out; fewer: the last points have no time). Of `ExtendedData` arrays of a track, speed and course are
 * read, the speed in the unit that fits the way flown, for the format states none. `gx:angles` are a model's pose: not read.
 * Source: OGC 07-147r2, KML 2.2; Google, KML Reference (gx:Track).
 */
export class KmlReader implements XmlLogReader {
  private readonly tracks = new KmlSource();
  private readonly timed = new KmlSource();
  private readonly lines = new KmlSource();
  private readonly waypoints: Waypoint[] = [];
  private readonly whens: WhenReader;
  private geometry: Geometry | null = null;
  private geometryName = "";
  private array: number[] | null = null;
  private placemarkDepth = 0;
  private placemarkName = "";
  private placemarkTime = Number.NaN;
  private point: Geometry | null = null;
  private documentName = "";
  private wanted = "";
  private wantedDepth = 0;
  private value = "";
  private wantedLine = 0;
  private readonly at: XmlStream;
  private readonly tally: Tally;

  constructor(at: XmlStream, tally: Tally) {
    this.at = at;
    this.tally = tally;
    this.whens = new WhenReader(tally);
  }

  open(name: string, attributes: Readonly<Record<string, string>>, depth: number): void {
    switch (name) {
      case "Placemark":
        this.endPlacemark();
        this.placemarkDepth = depth;
        this.placemarkName = "";
        this.placemarkTime = Number.NaN;
        break;
      case "Track":
      case "LineString":
      case "Point":
        this.geometry = new Geometry();
        this.geometryName = name;
        break;
      case "name":
        if (depth === this.placemarkDepth + 1 || (this.documentName === "" && this.placemarkDepth === 0)) {
          this.want(name, depth);
        }
        break;
      case "SimpleArrayData": {
        const column = arrayNamed(attributes.name ?? "");
        this.array = column === null || this.geometry === null ? null : [];
        if (this.array !== null) this.geometry!.arrays.set(column!, this.array);
        break;
      }
      case "value":
        if (this.array !== null) this.want(name, depth);
        break;
      case "NetworkLink":
        this.tally.add("link-not-followed", "note", this.at.place());
        break;
      case "when":
      case "begin":
        this.want(name, depth);
        break;
      case "coord":
      case "coordinates":
      case "altitudeMode":
        if (this.geometry !== null) this.want(name, depth);
    }
  }

  text(text: string): void {
    if (this.wanted !== "") this.value += text;
  }

  close(name: string, depth: number): void {
    if (this.wanted !== "" && depth === this.wantedDepth) this.take();
    else if (name === "SimpleArrayData") this.array = null;
    else if (this.geometry !== null && name === this.geometryName) this.endGeometry();
    else if (depth === this.placemarkDepth) this.endPlacemark();
  }

  end(): void {
    this.wanted = "";
    if (this.geometry !== null) this.endGeometry();
    this.endPlacemark();
  }

  finish(file: string): Found {
    const kinds = [this.tracks, this.timed, this.lines];
    const best = kinds.find((k) => k.columns.length > 0) ?? kinds.find((k) => k.seen > 0) ?? this.tracks;
    for (const kind of kinds) {
      if (kind === best || kind.seen === 0) continue;
      const facts = { geometry: kind === this.timed ? "timed-placemark" : "line", points: kind.seen };
      this.tally.add(
        "unused-geometry",
        "note",
        { line: 0, column: 0, point: -1 },
        { facts, detail: facts.geometry },
      );
    }
    for (const tell of best.faults) tell();
    const name = best.name || this.documentName || file;
    const track = speedsByWay(best.columns.finish(name, "kml"), this.tally);
    return {
      // Placemarks of their own stand in any order; the points of a track are in the track's.
      track: best === this.timed ? inTimeOrder(track, this.tally) : segmentsInOrder(track, this.tally),
      waypoints: this.waypoints,
      routes: [],
      pointsSeen: best.seen,
    };
  }

  private want(name: string, depth: number): void {
    this.wanted = name;
    this.wantedDepth = depth;
    this.value = "";
    this.wantedLine = this.at.line;
  }

  private take(): void {
    const { wanted, value, geometry } = this;
    this.wanted = "";
    if (wanted === "name") {
      if (this.placemarkDepth > 0) this.placemarkName = value.trim();
      else this.documentName = value.trim();
    } else if (wanted === "when" || wanted === "begin") {
      const time = this.whens.read(value, this.at.place());
      if (geometry !== null && this.geometryName === "Track") geometry.times.push(time);
      else if (Number.isNaN(this.placemarkTime)) this.placemarkTime = time;
    } else if (wanted === "value") this.array?.push(readDecimal(value));
    else if (geometry === null) return;
    else if (wanted === "altitudeMode") geometry.mode = value.trim();
    else if (wanted === "coord") {
      geometry.coordinates.push(spaceTuple(value));
      geometry.lines.push(this.wantedLine);
    } else geometry.addTuples(value, this.wantedLine);
  }

  private endGeometry(): void {
    const { geometry } = this;
    this.geometry = null;
    this.array = null;
    if (geometry === null) return;
    if (this.geometryName === "Point") this.point = geometry;
    else if (this.geometryName === "LineString") this.add(this.lines, geometry);
    else {
      this.add(this.tracks, geometry);
      const surplus = geometry.times.length - geometry.coordinates.length;
      if (surplus === 0 || geometry.times.length === 0) return;
      const facts = { times: geometry.times.length, coordinates: geometry.coordinates.length };
      const dropped = Math.max(0, surplus);
      this.tracks.seen += dropped;
      const place = this.at.place();
      this.tracks.faults.push(() =>
        this.tally.add("track-lists-differ", "warning", place, { facts, dropped }),
      );
    }
  }

  /** A placemark is over: its point is one of the flight where it has a time, else a place. */
  private endPlacemark(): void {
    const { point } = this;
    this.point = null;
    this.placemarkDepth = 0;
    if (point === null || point.coordinates.length === 0) return;
    if (!Number.isNaN(this.placemarkTime)) {
      point.times.push(this.placemarkTime);
      this.add(this.timed, point);
      return;
    }
    const { latitude, longitude } = point.coordinates[0]!;
    if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) {
      this.tally.add("unreadable-place", "warning", this.at.place());
      return;
    }
    const height = point.heights(null, this.at.place())[0]!;
    const altitude = Number.isNaN(height) ? null : height;
    this.waypoints.push({ ident: this.placemarkName, latitude, longitude, altitude });
  }

  private add(to: KmlSource, geometry: Geometry): void {
    if (to !== this.timed) to.begin(this.placemarkName);
    to.add(geometry, geometry.heights(this.tally, this.at.place()), this.tally);
  }
}
