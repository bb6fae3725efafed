/** Of a course or an arc of which a part is not among what is judged, nothing is *met* for the whole. */
import type { CourseFacts } from "../course/facts.ts";

/** Why, as a code, the whole is not judged. A course to a fix that was left before it is judged as far as it was flown, which is told: many a brief leads from it to an arc or another course. */
export function partReason({ part }: Pick<CourseFacts, "part">): string | null {
  if (!part) return null;
  const { before, after, ofNm } = part;
  if (after?.why === "log-ends") return "log-ends-within";
  if (before?.why === "log-begins") return "log-begins-within";
  if (ofNm === null) return null;
  return after?.why ?? before?.why ?? null;
}
