/** The frame around the views: name, ways, what is under way, what there is to say, and files dropped anywhere. */
import { useEffect } from "preact/hooks";
import type { HoldFacts } from "../src/index.ts";
import { cancel, flight, notices, reopen, work } from "./flight.ts";
import { filledFrom, typedHold } from "./next-hold.ts";
import { openOnSheet } from "./opening.ts";
import { address, go, type Place, place } from "./place.ts";
import { NextHold } from "./views/next-hold.tsx";
import { Open } from "./views/open.tsx";
import { Sheet } from "./views/sheet.tsx";

function useDroppedFiles(): void {
  useEffect(() => {
    const allow = (event: DragEvent) => event.preventDefault();
    const take = (event: DragEvent) => {
      event.preventDefault();
      openOnSheet([...(event.dataTransfer?.files ?? [])]);
    };
    addEventListener("dragover", allow);
    addEventListener("drop", take);
    return () => {
      removeEventListener("dragover", allow);
      removeEventListener("drop", take);
    };
  }, []);
}

function Way({ to, words, here }: { to: Place; words: string; here: Place }) {
  return (
    <a href={address(to)} aria-current={to === here ? "page" : undefined}>
      {words}
    </a>
  );
}

function UnderWay() {
  const now = work.value;
  return (
    <div class="underway screen" role="status">
      {now && (
        <p>
          <span>{now.words}</span> <progress value={now.share ?? undefined} max={1} aria-label={now.words} />{" "}
          <button type="button" onClick={cancel}>
            Cancel
          </button>
        </p>
      )}
    </div>
  );
}

function Notices() {
  return (
    <div class="notices screen" role="alert">
      {notices.value.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}

/** Fills the panel for the next hold from one of the sheet, and goes there. */
function solveNext(facts: HoldFacts): void {
  if (!flight.value) return;
  typedHold.value = filledFrom(flight.value.document, facts);
  go("hold");
  scrollTo(0, 0);
}

export function App() {
  useDroppedFiles();
  useEffect(() => void reopen(), []);
  const at = place.value;
  const here: Place = at === "sheet" && !flight.value && !work.value ? "open" : at;
  return (
    <div class="page">
      <a class="skip" href="#content">
        To the content
      </a>
      <nav class="top" aria-label="Hindtrack">
        <a class="name" href={address("open")}>
          Hindtrack
        </a>
        <Way to="open" words="Open" here={here} />
        {flight.value && <Way to="sheet" words="Sheet" here={here} />}
        <Way to="hold" words="Next hold" here={here} />
      </nav>
      <UnderWay />
      <Notices />
      <main id="content" tabIndex={-1}>
        {here === "open" && <Open />}
        {here === "hold" && <NextHold />}
        {here === "sheet" && flight.value && <Sheet flight={flight.value} nextHold={solveNext} />}
      </main>
    </div>
  );
}
