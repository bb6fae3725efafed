/** Named places and routes: the stream cuts out their elements, a DOM and a GeoJSON library read that small part. */
import { gpx } from "@tmcw/togeojson";
import { DOMParser } from "@xmldom/xmldom";
import { METRES_PER_FOOT } from "../quantity/factor.ts";
import { readDecimal } from "./decimal.ts";
import type { Route, Waypoint } from "./imported.ts";
import type { Place, Tally } from "./tally.ts";

/** Characters of source handed over at once: the DOM costs a hundred times its text, so it is kept small. */
const BATCH = 200_000;
/** Characters of source of one place; a longer one is left out and counted (`place-too-long`). */
const MAX_PLACE = 100_000;

// biome-ignore lint/suspicious/noControlCharactersInRegex: characters that XML 1.0 does not allow
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/gu;

/** Element names that are carried over: well-formed, and none that the library would take for a place or a track. */
const isCarried = (name: string): boolean =>
  /^[A-Za-z_][\w.-]*$/.test(name) && !/^(?:gpx|wpt|rte|rtept|trk|trkseg|trkpt)$/.test(name);

const escaped = (text: string): string =>
  text.replace(NOT_XML, "\ufffd").replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");

/**
 * Writes each `wpt` and `rtept` anew as a plain `wpt` without prefixes, so that the library (togeojson 7.1) reads
 * names and heights of route points, one-point routes and `gpx:` files, which it would drop as they stand.
 * A place without readable position is left out and counted: `unreadable-place`.
 */
export class PlaceCutter {
  /** True between the begin and end of a `wpt` or `rte`: the stream's events are for us. */
  busy = false;
  readonly waypoints: Waypoint[] = [];
  private readonly routePoints: Waypoint[][] = [];
  private readonly routeNames: string[] = [];
  /** Where each place of the waiting source goes. */
  private targets: Waypoint[][] = [];
  private source = "";
  private sourceLength = 0;
  private outerDepth = 0;
  private pointDepth = 0;
  private pointSource = "";
  private wantsName = false;
  private readonly inner: { readonly name: string; readonly depth: number }[] = [];
  private target: Waypoint[] = this.waypoints;
  private readonly tally: Tally;

  constructor(tally: Tally) {
    this.tally = tally;
  }

  begin(
    name: "wpt" | "rte",
    attributes: Readonly<Record<string, string>>,
    depth: number,
    place: Place,
  ): void {
    this.busy = true;
    this.outerDepth = depth;
    this.place = place;
    if (name === "wpt") {
      this.target = this.waypoints;
      this.beginPoint(attributes, depth);
    } else {
      this.target = [];
      this.routePoints.push(this.target);
      this.routeNames.push("");
    }
  }
  private place: Place = { line: 0, column: 0, point: -1 };

  open(name: string, attributes: Readonly<Record<string, string>>, depth: number): void {
    if (this.pointDepth === 0) {
      if (name === "rtept") this.beginPoint(attributes, depth);
      else this.wantsName = name === "name" && depth === this.outerDepth + 1;
    } else if (isCarried(name)) {
      this.pointSource += `<${name}>`;
      this.inner.push({ name, depth });
    }
  }

  text(text: string): void {
    if (this.pointDepth > 0) {
      if (this.pointSource.length <= MAX_PLACE) this.pointSource += escaped(text);
    } else if (this.wantsName) this.routeNames[this.routeNames.length - 1] += text;
  }

  close(depth: number): void {
    if (this.pointDepth === depth) this.endPoint();
    else if (this.pointDepth > 0) this.closeInner(depth);
    else this.wantsName = false;
    if (depth <= this.outerDepth) {
      this.busy = false;
      if (this.sourceLength > BATCH) this.read();
    }
  }

  /** The file ends inside a place: its position is known, its unfinished element is closed by the writer. */
  end(): void {
    if (this.pointDepth > 0) this.endPoint();
    this.busy = false;
  }

  /** All routes of the file; those of which no point could be read are left out (their points are counted). */
  finish(): { readonly waypoints: readonly Waypoint[]; readonly routes: readonly Route[] } {
    this.read();
    const routes = this.routePoints.map((points, i) => ({ name: this.routeNames[i]!.trim(), points }));
    return { waypoints: this.waypoints, routes: routes.filter((r) => r.points.length > 0) };
  }

  private beginPoint(attributes: Readonly<Record<string, string>>, depth: number): void {
    this.pointDepth = depth;
    const { lat = "", lon = "" } = attributes;
    const latitude = readDecimal(lat);
    const longitude = readDecimal(lon);
    const onEarth = Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180;
    this.pointSource = onEarth ? `<wpt lat="${latitude}" lon="${longitude}">` : "";
    this.readable = onEarth;
    if (!onEarth) {
      this.tally.add("unreadable-place", "warning", this.place, {
        facts: { lat: lat.slice(0, 40), lon: lon.slice(0, 40) },
      });
    }
  }
  private readable = false;

  /** Closes what is open at this depth and deeper: broken files leave elements open. */
  private closeInner(depth: number): void {
    for (let last = this.inner.at(-1); last !== undefined && last.depth >= depth; last = this.inner.at(-1)) {
      this.pointSource += `</${last.name}>`;
      this.inner.pop();
    }
  }

  private endPoint(): void {
    this.closeInner(0);
    this.pointDepth = 0;
    if (!this.readable) return;
    if (this.pointSource.length > MAX_PLACE) {
      this.tally.add("place-too-long", "warning", this.place, { facts: { limit: MAX_PLACE } });
      return;
    }
    this.source += `${this.pointSource}</wpt>`;
    this.sourceLength = this.source.length;
    this.targets.push(this.target);
    if (this.sourceLength > BATCH) this.read();
  }

  /** Hands the waiting source to the library; features come back in the same order, one a place. */
  private read(): void {
    const { targets } = this;
    if (targets.length === 0) return;
    const text = `<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1">${this.source}</gpx>`;
    this.source = "";
    this.sourceLength = 0;
    this.targets = [];
    const quiet = () => undefined;
    const features = gpx(new DOMParser({ onError: quiet }).parseFromString(text, "text/xml")).features;
    if (features.length !== targets.length) throw new RangeError(`invalid places: ${features.length}`);
    features.forEach((feature, i) => {
      if (feature.geometry?.type !== "Point") return;
      const [longitude, latitude, metres] = feature.geometry.coordinates;
      const name: unknown = feature.properties?.name;
      targets[i]!.push({
        ident: typeof name === "string" ? name.trim() : "",
        latitude: latitude!,
        longitude: longitude!,
        altitude: metres === undefined ? null : metres / METRES_PER_FOOT,
      });
    });
  }
}
