/** Columns beside a document as JSON and back, so that a page can carry them inside itself. */
import { rounded } from "../quantity/round.ts";

const TYPES = { f64: Float64Array, u8: Uint8Array, i8: Int8Array } as const;
type Tag = keyof typeof TYPES;

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

/** Typed arrays become `{ f64: [...] }`, numbers rounded as in the document, unknown ones null. */
export function packed(value: unknown, field = ""): Json {
  for (const [tag, Type] of Object.entries(TYPES)) {
    if (!(value instanceof Type)) continue;
    return { [tag]: Array.from(value, (n) => (Number.isFinite(n) ? rounded(n, field) : null)) };
  }
  if (Array.isArray(value)) return value.map((item) => packed(item, field));
  if (value !== null && typeof value === "object") {
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, packed(inner, key)]));
  }
  return value as Json;
}

/** The reverse of `packed`. */
export function unpacked(value: Json): unknown {
  if (Array.isArray(value)) return value.map(unpacked);
  if (value === null || typeof value !== "object") return value;
  const [tag, ...others] = Object.keys(value);
  if (tag !== undefined && tag in TYPES && others.length === 0) {
    const numbers = value[tag] as (number | null)[];
    return TYPES[tag as Tag].from(numbers.map((n) => n ?? Number.NaN));
  }
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, unpacked(inner)]));
}
