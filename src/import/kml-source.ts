/** Points of one kind in a KML file, gathered until it is known which kind becomes the track. */
import { direction } from "../quantity/angle.ts";
import { GrowingColumns } from "./columns.ts";
import type { Geometry } from "./kml-geometry.ts";
import type { Tally } from "./tally.ts";

export class KmlSource {
  readonly columns = new GrowingColumns();
  /** Points of this kind in the file, readable or not. */
  seen = 0;
  name = "";
  /** Told only when this kind becomes the track: points of another kind are not lost, but unused. */
  readonly faults: (() => void)[] = [];

  /** A geometry begins a segment; the first one's placemark names the track. */
  begin(name: string): void {
    this.columns.breakHere();
    if (this.name === "") this.name = name;
  }

  /** The nth time belongs to the nth coordinate; heights in feet. */
  add(geometry: Geometry, heights: Float64Array, tally: Tally): void {
    geometry.coordinates.forEach(({ latitude, longitude }, i) => {
      const line = geometry.lines[i]!;
      if (Number.isNaN(latitude) || Number.isNaN(longitude)) {
        const place = { line, column: 0, point: this.seen };
        this.faults.push(() => tally.add("unreadable-position", "warning", place, { dropped: 1 }));
      } else {
        this.columns.push(geometry.times[i] ?? Number.NaN, latitude, longitude, heights[i]!, line);
        for (const [column, values] of geometry.arrays) {
          const value = values[i] ?? Number.NaN;
          if (value >= 0) this.columns.set(column, column === "trackAngle" ? direction(value) : value);
        }
      }
      this.seen++;
    });
  }
}
