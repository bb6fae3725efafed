/** Unit and reference types: a number that says what it measures and against what. */

declare const unit: unique symbol;

/**
 * A number tagged with its unit and reference. The tag is optional, so literals and results of arithmetic
 * are accepted, while a value of one unit passed for another (feet for metres, magnetic for true) is an error.
 * The types guard borders (signatures, fields); inside a formula, care and tests guard.
 */
type In<U extends string> = number & { readonly [unit]?: U };

/** Geodetic latitude or longitude, WGS84, degrees; north and east positive. */
export type Degrees = In<"degrees of latitude or longitude">;
/** A direction from true north, degrees, [0, 360). */
export type TrueDegrees = In<"degrees from true north">;
/** A direction from magnetic north, degrees, [0, 360). */
export type MagneticDegrees = In<"degrees from magnetic north">;
/** A difference of directions, degrees, right (clockwise) positive, [-180, 180) unless a turn is summed. */
export type TurnDegrees = In<"degrees of turn, right positive">;
/** Magnetic variation, degrees, east positive: true = magnetic + variation. */
export type VariationDegrees = In<"degrees of variation, east positive">;
/** A standard deviation, half-width or other size of an angle, degrees, never negative. */
export type AngleSize = In<"degrees, size of an angle">;
export type DegreesPerSecond = In<"degrees per second, right positive">;

/** Height above mean sea level as far as the log's datum is known, feet. GPS height is not an altimeter. */
export type FeetMsl = In<"feet above mean sea level">;
/** A difference of heights, feet. */
export type Feet = In<"feet">;
export type FeetPerMinute = In<"feet per minute, up positive">;
export type Knots = In<"knots">;
export type NauticalMiles = In<"nautical miles">;
export type Metres = In<"metres">;
export type MetresPerSecond = In<"metres per second">;
export type Seconds = In<"seconds">;
/** Milliseconds since 1970-01-01T00:00:00Z, as in Date. */
export type UtcMillis = In<"milliseconds of UTC">;
/** A share of a whole, 0 to 1 (or a share of a limit, which may exceed 1). */
export type Share = In<"share">;
