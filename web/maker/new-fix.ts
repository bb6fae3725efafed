/** A point as it is written among the fixes of a brief. */
import type { ListedPoint, Position } from "../../src/index.ts";
import type { Values } from "./values.ts";

export interface NewFix {
  readonly ident: string;
  readonly fixes: Values;
}

/** Five decimals of a degree are about a metre. */
const place = (degrees: number): number => Math.round(degrees * 1e5) / 1e5;

export const newFix = ({ latitude, longitude }: Position, ident: string): NewFix => ({
  ident,
  fixes: { [ident]: { lat: place(latitude), lon: place(longitude) } },
});

export const listedFix = ({
  ident,
  latitude,
  longitude,
  kind,
  declination,
  elevation,
}: ListedPoint): NewFix => ({
  ident,
  fixes: {
    [ident]: {
      lat: latitude,
      lon: longitude,
      ...(kind === "waypoint" ? {} : { kind }),
      ...(declination === null ? {} : { declination }),
      ...(elevation === null ? {} : { elevation_ft: Math.round(elevation) }),
    },
  },
});
