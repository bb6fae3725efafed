/** Forecast winds in one line, as in "195/20 at 3000, 210/25 at 6000": from true, knots, feet. */
import { typedHeight } from "./feet.ts";
import { isMap, listOf, mapOf, type Values } from "./values.ts";

const WIND =
  /^\s*(\d{1,3})\s*°?\s*T?\s*\/\s*(\d{1,3})(?:\.\d+)?\s*(?:kt)?(?:\s+(?:at\s+)?(\d[\d,.'’ ]*)\s*(?:ft)?)?\s*$/i;

/** Null where a part is no wind. What is known besides of the winds `before` (doubt, source) stays with the wind of that place in the line. */
export function typedWinds(text: string, before: unknown = []): readonly Values[] | null {
  const parts = text.split(/\s*[,;]\s+/).filter((part) => part.trim() !== "");
  const winds = parts.map((part, i): Values | null => {
    const [, from, kt, feet] = WIND.exec(part) ?? [];
    if (from === undefined || Number(from) > 360) return null;
    const height = feet === undefined ? undefined : typedHeight(feet);
    if (height === null) return null;
    const { altitude_ft: _, ...kept } = mapOf(listOf(before)[i]);
    return {
      source: "forecast",
      ...kept,
      from_true: Number(from),
      kt: Number(kt),
      ...(height === undefined ? {} : { altitude_ft: height }),
    };
  });
  return winds.every((wind) => wind !== null) ? (winds as Values[]) : null;
}

/** Winds while they are typed: the letters, and the winds that stood there before. */
interface Typing {
  readonly typed: string;
  readonly before: unknown;
}
const isTyping = (wind: unknown): wind is Typing => isMap(wind) && typeof wind.typed === "string";

/** As the brief in the making holds what is typed. */
export const windsTyped = (typed: string, now: unknown): Typing => ({
  typed,
  before: isTyping(now) ? now.before : now,
});

/** As a brief has them; what cannot be read stays as it was typed, for the reader to complain of. */
export const windsWritten = (wind: unknown): unknown =>
  isTyping(wind) ? (typedWinds(wind.typed, wind.before) ?? wind.typed) : wind;

/** As they stand in their field. */
export function windsText(wind: unknown): string {
  if (isTyping(wind)) return wind.typed;
  return listOf(wind)
    .map(mapOf)
    .map(({ from_true, kt, altitude_ft }) => {
      const from = typeof from_true === "number" ? String(from_true).padStart(3, "0") : from_true;
      return `${from}/${kt}${altitude_ft === undefined ? "" : ` at ${altitude_ft}`}`;
    })
    .join(", ");
}
