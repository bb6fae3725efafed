/** Takes the reader of a sheet to the exercise that a link led to, and its drawings to the moment. */
import { useContext, useEffect } from "preact/hooks";
import { CursorOfSheet, markedSpan } from "../drawings/index.ts";
import type { Aim } from "../place.ts";

/** The heading first: it says what is looked at. Then its drawing, where that is not in view yet. */
function bringIntoView(section: HTMLElement): void {
  section.scrollIntoView({ block: "start", behavior: "instant" });
  const heading = section.querySelector<HTMLElement>("h2");
  if (!heading) return;
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
}

/** Stands last on the sheet, so that it comes when all above it stands. */
export function Aimed({ aim }: { aim: Aim | null }) {
  const cursor = useContext(CursorOfSheet);
  useEffect(() => {
    const section = aim && document.getElementById(`exercise-${aim.exercise + 1}`);
    if (!section) return;
    if (cursor && aim.span) {
      markedSpan(cursor).value = aim.span;
      cursor.value = aim.span.from;
    }
    // drawings measure their width in the frame after they came
    const frame = requestAnimationFrame(() => bringIntoView(section));
    return () => cancelAnimationFrame(frame);
  }, [aim, cursor]);
  return null;
}
