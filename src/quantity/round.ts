/** Rounds records to digits that their own doubts can carry, by the unit at the end of a field’s name. */

/** Decimals by the unit at the end of a field's name; all finer than the doubt of what they carry. */
const DECIMALS: readonly (readonly [RegExp, number])[] = [
  [/(latitude|longitude)$/, 7],
  [/Nm$/, 4],
  [/(Deg|Kt|S)$/, 2],
  [/(Ft|Fpm)$/, 0],
];
/** Shares, needle values, rates and counts. */
const OTHER_DECIMALS = 4;

/** Lists of latitude and longitude. */
const PLACES = new Set(["start", "end", "threshold", "line", "station", "point", "fixAt"]);

function decimalsFor(field: string): number {
  return DECIMALS.find(([pattern]) => pattern.test(field))?.[1] ?? OTHER_DECIMALS;
}

/** A copy of a JSON-like value with each number rounded by its field's unit. Coordinates in lists keep 7 decimals. */
export function rounded<T>(value: T, field = ""): T {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new RangeError(`invalid ${field}: ${value}`);
    const r = Number(value.toFixed(decimalsFor(field)));
    return (r === 0 ? 0 : r) as T; // no negative zero in JSON
  }
  if (Array.isArray(value)) {
    const inner = PLACES.has(field) ? "latitude" : field;
    return value.map((item) => rounded(item, inner)) as T;
  }
  if (value !== null && typeof value === "object") {
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, rounded(v, k)])) as T;
  }
  return value;
}
