import { gpx, kml } from "@tmcw/togeojson";
import { DOMParser } from "@xmldom/xmldom";
import { describe, expect, it } from "vitest";
import { readLog } from "../../src/import/index.ts";
import { READABLE } from "./expected.ts";
import { fixtureBytes, fixtureNames, fixtureText } from "./fixtures.ts";

interface Reference {
  readonly coordinates: number[][];
  readonly times: string[];
}

/** All track points that the reference finds, and their times where every point has one. */
function referenceOf(text: string): Reference {
  const document = new DOMParser({ onError: () => undefined }).parseFromString(text, "text/xml");
  const coordinates: number[][] = [];
  const times: string[] = [];
  for (const { geometry, properties } of gpx(document).features) {
    if (geometry?.type !== "LineString" && geometry?.type !== "MultiLineString") continue;
    if (properties?._gpxType !== "trk") continue;
    const several = geometry.type === "MultiLineString";
    coordinates.push(...(several ? geometry.coordinates.flat() : geometry.coordinates));
    const own: unknown = properties.coordinateProperties?.times;
    if (Array.isArray(own)) times.push(...(own.flat() as string[]));
  }
  return { coordinates, times };
}

/** Where we differ from the reference, each with its reason. Everything else must be equal. */
const DIFFERENCES: Readonly<Record<string, string>> = {
  "gpx-prefixed.gpx": "the reference finds no element with a prefix",
  "gpx-undeclared-prefix.gpx": "the reference refuses an undeclared prefix",
  "gpx-prefixed-route.gpx": "the reference finds no element with a prefix",
  "gpx-one-point-segment.gpx": "the reference drops a segment of one point: no line",
  "gpx-track-without-segment.gpx": "the reference reads no point outside a segment",
  "gpx-newest-track-first.gpx": "we put segments in the order of time",
  "gpx-fix-none.gpx": "we leave out a point whose receiver says that it had no fix",
  "gpx-huge-and-odd-numbers.gpx": "the reference reads 0x23 as 0 and Infinity as a latitude",
  "gpx-unreadable-value.gpx": "the reference reads 3000 ft as 3000 metres",
  "gpx-truncated-in-text.gpx": "the reference refuses broken XML",
  "gpx-truncated-in-tag.gpx": "the reference refuses broken XML",
  "gpx-truncated-between-points.gpx": "the reference refuses broken XML",
  "gpx-broken-midway.gpx": "the reference refuses broken XML",
  "gpx-unclosed-waypoint.gpx": "the reference refuses broken XML",
  "gpx-unclosed-point.gpx": "the reference refuses broken XML",
  "gpx-stray-close-tag.gpx": "the reference refuses broken XML",
  "gpx-two-documents.gpx": "the reference refuses broken XML",
  "gpx-concatenated.gpx": "the reference refuses broken XML",
  "gpx-leading-newline.gpx": "the reference refuses space before the declaration",
  "gpx-one-point.gpx": "the reference drops a segment of one point: no line",
  "gpx-wrong-nesting.gpx": "the reference refuses broken XML",
  "gpx-zero-filled-end.gpx": "the reference refuses broken XML",
  "xml-too-deep.gpx": "we stop at a depth of 64",
};

/** Where only the times differ: the reference hands them to Date, which reads fewer spellings. */
const TIME_DIFFERENCES: Readonly<Record<string, string>> = {
  "gpx-unreadable-time.gpx": "a point without a time moves the times of the reference",
  "gpx-comma-fraction.gpx": "Date reads no decimal comma (ISO 8601-1, 5.3.1.4 allows it)",
  "gpx-leap-second.gpx": "Date reads no second 60",
  "gpx-time-basic.gpx": "Date reads no basic form (ISO 8601-1, 5.4.2.1)",
  "gpx-time-epoch.gpx": "Date reads no text of seconds of the epoch",
};

describe("@xmldom/xmldom 0.9.12 and @tmcw/togeojson 7.1.3 on the same text", () => {
  const compared = fixtureNames().filter((name) => name in READABLE && name.endsWith(".gpx"));

  it.each(compared.filter((name) => !(name in DIFFERENCES)))(
    "%s reads the same, point for point",
    async (name) => {
      const { coordinates, times } = referenceOf(fixtureText(name));
      const { track } = await readLog([fixtureBytes(name)], name);
      expect(track.length).toBe(coordinates.length);
      expect(track.length).toBeGreaterThan(0);
      coordinates.forEach(([longitude, latitude, metres], row) => {
        expect([track.longitude[row], track.latitude[row]]).toEqual([longitude, latitude]);
        expect(track.altitude[row]).toEqual(metres === undefined ? Number.NaN : metres / 0.3048);
      });
      // With a point without time the reference moves all later times up one: times are compared where all are there.
      if (times.length === coordinates.length && !(name in TIME_DIFFERENCES)) {
        // A time without zone is local to Date, UTC to us: the list of deliberate differences.
        const zone = name === "gpx-times-without-zone.gpx" ? "Z" : "";
        const offset = (text: string) => text.replace(/([+-]\d\d)(\d\d)?$/, (_, h, m) => `${h}:${m ?? "00"}`);
        expect([...track.time]).toEqual(times.map(offset).map((text) => Date.parse(`${text.trim()}${zone}`)));
      }
    },
  );

  it.each(Object.entries(DIFFERENCES))("%s differs on purpose: %s", async (name) => {
    const { track } = await readLog([fixtureBytes(name)], name);
    let reference: Reference;
    try {
      reference = referenceOf(fixtureText(name));
    } catch {
      return; // refused, as the reason says
    }
    const ours = Array.from(track.latitude, (latitude, row) => {
      const feet = track.altitude[row]!;
      return [track.longitude[row]!, latitude, ...(Number.isNaN(feet) ? [] : [feet])];
    });
    expect(
      reference.coordinates.map(([lon, lat, m]) => [lon, lat, ...(m === undefined ? [] : [m / 0.3048])]),
    ).not.toEqual(ours);
  });
});

/** Of KML: all points of lines and single points, and the times of tracks. */
function kmlReferenceOf(text: string): Reference {
  const document = new DOMParser({ onError: () => undefined }).parseFromString(text, "text/xml");
  const coordinates: number[][] = [];
  const times: string[] = [];
  for (const { geometry, properties } of kml(document).features) {
    const parts = geometry?.type === "GeometryCollection" ? geometry.geometries : [geometry];
    for (const part of parts) {
      if (part?.type === "LineString") coordinates.push(...part.coordinates);
      else if (part?.type === "Point" && properties?.timestamp) coordinates.push(part.coordinates);
    }
    const own: unknown = properties?.coordinateProperties?.times ?? properties?.timestamp;
    if (own) times.push(...([own].flat(2) as string[]));
  }
  return { coordinates, times };
}

const KML_DIFFERENCES: Readonly<Record<string, string>> = {
  "kml-prefixed.kml": "the reference finds no element with a prefix of the file's own",
  "kml-track-empty-coord.kml": "the reference gives a point of NaN for an empty coord",
  "kml-height-above-ground.kml": "a height above ground is none above the sea: unknown to us",
  "kml-height-zero-on-ground.kml": "zeroes clamped to the ground are fillers: unknown to us",
  "kml-time-spans.kml": "the reference reads no time of a span",
  "kml-track-and-line.kml": "the reference gives the line and the placemark beside the track too",
  "kml-line-unreadable-tuple.kml": "the reference takes the height of north,35.6,900 for a latitude",
  "kml-coord-commas.kml": "the reference reads no coord with commas",
  "kml-coordinates-with-spaces.kml": "the reference takes spaces after commas for the ends of tuples",
  "kml-placemarks-newest-first.kml": "we put placemarks of their own in the order of time",
  "kml-truncated.kml": "the reference refuses broken XML",
};

describe("@xmldom/xmldom 0.9.12 and @tmcw/togeojson 7.1.3, kml(), on the same text", () => {
  const compared = fixtureNames().filter((name) => name in READABLE && name.endsWith(".kml"));

  it.each(compared.filter((name) => !(name in KML_DIFFERENCES)))(
    "%s reads the same, point for point",
    async (name) => {
      const { coordinates, times } = kmlReferenceOf(fixtureText(name));
      const { track } = await readLog([fixtureBytes(name)], name);
      expect(track.length).toBe(coordinates.length);
      coordinates.forEach(([longitude, latitude, metres], row) => {
        expect([track.longitude[row], track.latitude[row]]).toEqual([longitude, latitude]);
        expect(track.altitude[row]).toEqual(metres === undefined ? Number.NaN : metres / 0.3048);
      });
      // A date alone is midnight to Date and no time of a fix to us; surplus times belong to no point.
      const known = times
        .slice(0, track.length)
        .map((text) => (text.length > 10 ? Date.parse(`${text.replace("Z", "")}Z`) : Number.NaN));
      expect([...track.time].slice(0, known.length)).toEqual(known);
    },
  );

  it.each(Object.entries(KML_DIFFERENCES))("%s differs on purpose: %s", async (name) => {
    const { track } = await readLog([fixtureBytes(name)], name);
    let reference: Reference;
    try {
      reference = kmlReferenceOf(fixtureText(name));
    } catch {
      return; // refused, as the reason says
    }
    const ours = Array.from(track.latitude, (latitude, row) => [
      track.longitude[row],
      latitude,
      track.altitude[row]! * 0.3048,
    ]);
    const theirs = reference.coordinates;
    const same =
      theirs.length === ours.length &&
      theirs.every((c, row) => c.length >= 2 && c.every((v, k) => Math.abs(v - ours[row]![k]!) < 1e-9)) &&
      reference.times.length === ours.length;
    expect(same).toBe(false);
  });
});
