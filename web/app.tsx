/** The frame around the views: name, ways, what is under way, what there is to say, and files dropped anywhere. */
import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";
import type { HoldFacts } from "../src/index.ts";
import { isGrowing } from "./drawings/index.ts";
import { cancel, type Flight, flight, notices, question, reopen, work } from "./flight.ts";
import { filledFrom, typedHold } from "./next-hold.ts";
import { dropOnSheet } from "./opening.ts";
import { address, go, type Place, place } from "./place.ts";
import { Columns } from "./views/columns.tsx";
import { NextHold } from "./views/next-hold.tsx";
import { Open } from "./views/open.tsx";
import { OtherFlights } from "./views/other-flights.tsx";
import { RouteOffers } from "./views/route-offers.tsx";
import { SaveAsPage } from "./views/save-as-page.tsx";
import { Sheet } from "./views/sheet.tsx";
import { StandardChoice } from "./views/standard-choice.tsx";

function useDroppedFiles(): void {
  useEffect(() => {
    const allow = (event: DragEvent) => event.preventDefault();
    const take = (event: DragEvent) => {
      event.preventDefault();
      void dropOnSheet([...(event.dataTransfer?.files ?? [])]);
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

/** The button goes with the work: whoever works by keyboard goes on from the content. */
function stop(): void {
  cancel();
  document.getElementById("content")?.focus();
}

function UnderWay() {
  const now = work.value;
  return (
    <div class="underway screen" role="status">
      {now && (
        <p>
          <span>{now.words}</span> <progress value={now.share ?? undefined} max={1} aria-label={now.words} />{" "}
          <button type="button" onClick={stop}>
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

function OpenedSheet({ flight }: { flight: Flight }) {
  return (
    <Sheet
      flight={flight}
      nextHold={solveNext}
      saves={<SaveAsPage flight={flight} />}
      offers={
        <>
          <RouteOffers flight={flight} />
          <OtherFlights flight={flight} />
          <StandardChoice flight={flight} />
        </>
      }
    />
  );
}

/** Says to a screen reader, and to tests, that more of the sheet is to come. */
function Content({ children }: { children: ComponentChildren }) {
  return (
    <main id="content" tabIndex={-1} aria-busy={isGrowing.value}>
      {children}
    </main>
  );
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
      {question.value && <Columns key={question.value.file} asked={question.value} />}
      <Content>
        {here === "open" && <Open />}
        {here === "hold" && <NextHold />}
        {here === "sheet" && flight.value && <OpenedSheet key={flight.value.opened} flight={flight.value} />}
      </Content>
    </div>
  );
}
