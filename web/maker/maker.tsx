/** On the sheet: the way into the maker of a brief, or the maker, which arrives when it is first asked for. */
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { DocumentExercise } from "../../src/index.ts";
import { type Flight, notices } from "../flight.ts";
import { keptMaking } from "./kept-making.ts";

type Parts = typeof import("./parts.ts");
const parts = signal<Parts | null>(null);

/** The maker's own part of the page; null, and said, where it does not arrive. */
async function arrived(): Promise<Parts | null> {
  try {
    parts.value ??= await import("./parts.ts");
  } catch {
    notices.value = [
      "The part of the page that makes briefs did not arrive from the local server. Start it again and reload.",
    ];
  }
  return parts.value;
}

/** While it is open it asks itself what the brief is held against. */
export const isMaking = (): boolean => Boolean(parts.value?.history.value);

export function Maker({ flight }: { flight: Flight }) {
  const made = parts.value;
  useEffect(() => {
    if (keptMaking(flight)) void arrived().then((its) => its?.takeUpKept(flight));
  }, [flight.opened]);
  if (made?.history.value) return <made.Panel flight={flight} />;
  const has = flight.document.brief !== null;
  return (
    <div class="fine save screen beside">
      <button
        id="brief-open"
        type="button"
        class={has ? "" : "btn"}
        onClick={async () => (await arrived())?.openMaker()}
      >
        {has ? "Change the brief" : "Say what was meant: make a brief"}
      </button>
      <p role="status" class={made?.isReworking.value ? "" : "vh"}>
        {made?.isReworking.value && "The debrief is being worked out with what was typed last."}
      </p>
      {!has && <p>Courses, holds and approaches are then held against what the lesson asked for.</p>}
    </div>
  );
}

export const canBeMeant = ({ kind, facts, source }: DocumentExercise): boolean =>
  source !== "brief" && facts !== null && (kind === "course" || kind === "hold" || kind === "approach");

/** On an exercise of the sheet that nobody meant: one click makes it one of the brief. */
export function MeanIt({ exercise }: { exercise: DocumentExercise }) {
  if (!canBeMeant(exercise)) return null;
  return (
    <p class="fine save screen">
      <button type="button" onClick={async () => (await arrived())?.mean(exercise)}>
        This {exercise.kind} was meant: hold it against a brief
      </button>
    </p>
  );
}
