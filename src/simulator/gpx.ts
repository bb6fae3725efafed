/** A track as GPX 1.1 text, one point a line. */
import { METRES_PER_FOOT } from "../quantity/factor.ts";
import { utcText } from "../quantity/time.ts";
import type { Track } from "../track/track.ts";

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

/** Source: *GPX 1.1 Schema Documentation*, topografix.com/GPX/1/1, 2004: wptType, `ele` in metres, `time` in UTC. */
export function gpxText(track: Track, decimals: number): string {
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Hindtrack simulator" xmlns="http://www.topografix.com/GPX/1/1">',
    `<trk><name>${escaped(track.name)}</name><trkseg>`,
  ];
  for (let i = 0; i < track.length; i++) {
    const lat = track.latitude[i]!.toFixed(decimals);
    const lon = track.longitude[i]!.toFixed(decimals);
    const ele = (track.altitude[i]! * METRES_PER_FOOT).toFixed(1);
    lines.push(
      `<trkpt lat="${lat}" lon="${lon}"><ele>${ele}</ele><time>${utcText(track.time[i]!)}</time></trkpt>`,
    );
  }
  lines.push("</trkseg></trk>", "</gpx>", "");
  return lines.join("\n");
}
