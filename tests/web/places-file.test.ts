/** Lists of points are told from logs, in the forms that both come in (GPX 1.1, KML 2.2; invented places). */
import { expect, test } from "vitest";
import { readPoints } from "../../src/index.ts";
import { isPointFile } from "../../web/places-file.ts";

const gpx = (inner: string) =>
  `\uFEFF<?xml version="1.0"?>\n<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="x">${inner}</gpx>`;
const kml = (inner: string) =>
  `<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document>${inner}</Document></kml>`;
const WPT = '<wpt lat="35.6" lon="172.3"><name>TARNO</name></wpt>';
const PLACEMARK =
  "<Placemark><name>TARNO</name><Point><coordinates>172.3,35.6,0</coordinates></Point></Placemark>";
const TRACK = '<trk><trkseg><trkpt lat="35.6" lon="172.3"/></trkseg></trk>';

test.each([
  ["waypoints of a GPX file", gpx(WPT)],
  [
    "waypoints with a prefix",
    `<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1"><g:wpt lat="35.6" lon="172.3"><g:name>TARNO</g:name></g:wpt></g:gpx>`,
  ],
  ["placemarks of a KML file", kml(PLACEMARK)],
  ["a long list", gpx(WPT.repeat(20_000))],
  ["a table", "ident,lat,lon\nTARNO,35.6,172.3\n"],
])("%s: a list of points", async (_, text) => {
  expect(await isPointFile(new Blob([text]))).toBe(true);
  const { points } = await readPoints([new TextEncoder().encode(text)], "list");
  expect(points.map(({ ident }) => ident)).toEqual(["TARNO"]);
});

test.each([
  ["a track with waypoints before it", gpx(WPT.repeat(20_000) + TRACK)],
  ["a route alone", gpx('<rte><rtept lat="35.6" lon="172.3"><name>TARNO</name></rtept></rte>')],
  [
    "a timed track of a KML file",
    kml(
      `${PLACEMARK}<Placemark><gx:Track xmlns:gx="x"><when/><gx:coord>1 2 3</gx:coord></gx:Track></Placemark>`,
    ),
  ],
  ["a line of a KML file", kml("<Placemark><LineString><coordinates>1,2 3,4</coordinates></LineString>")],
  ["a table of times", "time,lat,lon,name\n10:00:00,35.6,172.3,x\n"],
  ["a page of the web", "<!doctype html><html><body>x</body></html>"],
])("%s: no list", async (_, text) => {
  expect(await isPointFile(new Blob([text]))).toBe(false);
});

test("a tag that lies over the border of two pieces is seen", async () => {
  const text = gpx(WPT + TRACK);
  const border = text.indexOf("<trkpt") + 3;
  const file = new Blob([text]);
  file.stream = () =>
    new ReadableStream<Uint8Array<ArrayBuffer>>({
      start(pieces) {
        for (const piece of [text.slice(0, border), text.slice(border)])
          pieces.enqueue(new TextEncoder().encode(piece));
        pieces.close();
      },
    });
  expect(await isPointFile(file)).toBe(false);
});
