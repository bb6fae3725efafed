/** What each fixture must give, written by hand from what the file holds. */

export interface Expected {
  /** Points in the file, points read, points left after cleaning. */
  readonly points: readonly [seen: number, read: number, used: number];
  readonly codes: readonly string[];
  readonly waypoints?: number;
  readonly routes?: number;
}

/** Fixtures with a usable log. Codes of reading and cleaning together, in no order. */
export const READABLE: Readonly<Record<string, Expected>> = {
  "gpx-1.1-plain.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-1.0-speed-course.gpx": { points: [4, 4, 4], codes: [] },
  "gpx-prefixed.gpx": { points: [3, 3, 3], codes: [], waypoints: 1 },
  "gpx-no-namespace.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-no-version.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-undeclared-prefix.gpx": { points: [2, 2, 2], codes: [] },
  "gpx-bom-utf8.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-utf16le-mark.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-utf16be-mark.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-utf16le-no-mark.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-utf16-declared-eight-bit.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-iso-8859-1.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-windows-1252.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-unknown-encoding.gpx": { points: [5, 5, 5], codes: ["unknown-encoding"] },
  "gpx-undecodable-bytes.gpx": { points: [5, 5, 5], codes: ["undecodable-bytes"] },
  "gpx-crlf.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-cr-only.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-cdata.gpx": { points: [2, 2, 2], codes: [] },
  "gpx-comments.gpx": { points: [3, 3, 3], codes: [] },
  "gpx-five-entities.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-unknown-entity.gpx": { points: [5, 5, 5], codes: ["broken-xml"] },
  "gpx-two-tracks-three-segments.gpx": { points: [6, 6, 6], codes: [] },
  "gpx-one-point-segment.gpx": { points: [3, 3, 3], codes: [] },
  "gpx-track-without-segment.gpx": { points: [5, 5, 5], codes: [] },
  "gpx-extensions-speed-course.gpx": { points: [4, 4, 4], codes: [] },
  "gpx-extensions-foreign-time.gpx": { points: [2, 2, 2], codes: [] },
  "gpx-hdop-fix-sat.gpx": { points: [3, 3, 3], codes: [] },
  "gpx-fix-none.gpx": { points: [3, 2, 2], codes: ["point-without-fix"] },
  "gpx-missing-ele.gpx": { points: [4, 4, 4], codes: [] },
  "gpx-no-times.gpx": { points: [5, 5, 5], codes: ["no-times"] },
  "gpx-partly-timed.gpx": { points: [4, 4, 3], codes: ["point-without-time"] },
  "gpx-too-few-times.gpx": { points: [15, 15, 15], codes: ["too-few-times"] },
  "gpx-times-with-offset.gpx": { points: [4, 4, 4], codes: [] },
  "gpx-times-with-fraction.gpx": { points: [4, 4, 4], codes: [] },
  "gpx-times-without-zone.gpx": { points: [3, 3, 3], codes: ["time-without-zone"] },
  "gpx-unreadable-time.gpx": { points: [5, 5, 2], codes: ["unreadable-time", "point-without-time"] },
  "gpx-unreadable-position.gpx": { points: [5, 2, 2], codes: ["unreadable-position"] },
  "gpx-unreadable-value.gpx": { points: [4, 4, 4], codes: ["unreadable-value", "unreadable-value"] },
  "gpx-multiline-tags.gpx": { points: [3, 3, 3], codes: [] },
  "gpx-waypoints-and-routes.gpx": { points: [5, 5, 5], codes: [], waypoints: 2, routes: 2 },
  "gpx-prefixed-route.gpx": { points: [2, 2, 2], codes: [], waypoints: 2, routes: 2 },
  "gpx-unreadable-place.gpx": { points: [5, 5, 5], codes: ["unreadable-place"], waypoints: 1 },
  "gpx-place-too-long.gpx": { points: [5, 5, 5], codes: ["place-too-long"] },
  // The seventh point's time is cut off: its half is not read, the point has none.
  "gpx-truncated-in-text.gpx": { points: [7, 7, 6], codes: ["broken-xml", "point-without-time"] },
  // A point whose tag is cut off was never whole enough to be one.
  "gpx-truncated-in-tag.gpx": { points: [6, 6, 6], codes: ["broken-xml"] },
  "gpx-truncated-between-points.gpx": { points: [6, 6, 6], codes: ["broken-xml"] },
  "gpx-broken-midway.gpx": { points: [5, 5, 4], codes: ["broken-xml", "point-without-time"] },
  "gpx-unclosed-point.gpx": { points: [4, 4, 4], codes: ["broken-xml"] },
  "gpx-stray-close-tag.gpx": { points: [4, 4, 4], codes: ["broken-xml"] },
  "gpx-ampersand-in-name.gpx": { points: [5, 5, 5], codes: ["broken-xml"] },
  "gpx-null-byte.gpx": { points: [5, 5, 5], codes: ["broken-xml"] },
  "gpx-two-documents.gpx": { points: [4, 4, 4], codes: ["broken-xml"] },
  "gpx-huge-and-odd-numbers.gpx": { points: [6, 4, 4], codes: ["unreadable-position", "unreadable-value"] },
  "xml-entity-bomb.gpx": { points: [5, 5, 5], codes: ["broken-xml"] },
  "xml-external-entity.gpx": { points: [5, 5, 5], codes: ["broken-xml"] },
  "xml-too-deep.gpx": { points: [2, 2, 2], codes: ["xml-too-deep"] },
  "clean-duplicate-time.gpx": { points: [5, 5, 4], codes: ["duplicate-time"] },
  "clean-time-going-back.gpx": { points: [5, 5, 4], codes: ["time-going-back"] },
  "clean-time-far-ahead.gpx": { points: [5, 5, 4], codes: ["time-going-back"] },
  "clean-zero-zero.gpx": { points: [4, 4, 2], codes: ["zero-zero"] },
  "clean-out-of-range.gpx": { points: [4, 4, 2], codes: ["out-of-range"] },
  "clean-impossible-jump.gpx": { points: [10, 10, 9], codes: ["impossible-jump"] },
  "clean-first-point-elsewhere.gpx": { points: [10, 10, 8], codes: ["impossible-jump"] },
  "clean-position-step.gpx": { points: [80, 80, 80], codes: ["position-step"] },
  "clean-gap.gpx": { points: [12, 12, 12], codes: ["gap-in-log"] },
  "clean-impossible-height.gpx": { points: [4, 4, 4], codes: ["impossible-height"] },
  "clean-height-jump.gpx": { points: [9, 9, 9], codes: ["height-jump"] },
  "clean-frozen-position.gpx": { points: [15, 15, 10], codes: ["frozen-position"] },
  // Stands to second 160 and from 220 on, rolls at 2.5 m/s2: 75 m away at 168 and 212. Kept: 138 to 242.
  "clean-ground-noise.gpx": { points: [380, 380, 105], codes: ["ground-noise"] },
  "clean-across-antimeridian.gpx": { points: [8, 8, 8], codes: [] },
};

/** Fixtures of which nothing can be used, with the codes of the error, worst first. */
export const UNUSABLE: Readonly<Record<string, readonly string[]>> = {
  "gpx-decimal-comma.gpx": ["no-points", "unreadable-position"],
  "gpx-route-only.gpx": ["no-points"],
  "gpx-no-points.gpx": ["no-points"],
  "xml-not-a-log.xml": ["xml-not-a-log"],
  "xml-declaration-only.gpx": ["unknown-format"],
  "web-page.gpx": ["unknown-format"],
  "empty.gpx": ["empty-file"],
  "only-spaces.gpx": ["empty-file"],
  "plain-words.gpx": ["unknown-format"],
  "random-bytes.gpx": ["unknown-format"],
};
