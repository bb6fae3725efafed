/** The frame around the views: name, ways, what is under way, what there is to say, and files dropped anywhere. */
import type { ComponentChildren } from "preact";
import { useEffect, useMemo } from "preact/hooks";
import type { HoldFacts } from "../src/index.ts";
import { isGrowing } from "./drawings/index.ts";
import { dropOnSheet } from "./dropping.ts";
import { type Flight, flight, moveOn, question, work } from "./flight.ts";
import { flownBy, standing } from "./logbook.ts";
import { isMaking, Maker, MeanIt } from "./maker/maker.tsx";
import { filledFrom, typedHold } from "./next-hold.ts";
import { address, aim, go, type Place, place, shownFlight } from "./place.ts";
import { keeperOf } from "./row-notes.ts";
import { start } from "./start.ts";
import { Columns } from "./views/columns.tsx";
import { Entry } from "./views/logbook/entry.tsx";
import { LogbookHabits } from "./views/logbook/habits.tsx";
import { LogbookView } from "./views/logbook/logbook.tsx";
import { NextHold } from "./views/next-hold.tsx";
import { OtherFlights } from "./views/other-flights.tsx";
import { RouteOffers } from "./views/route-offers.tsx";
import { SaveAsPage } from "./views/save-as-page.tsx";
import { Sheet } from "./views/sheet.tsx";
import { StandardChoice } from "./views/standard-choice.tsx";
import { AllUnderWay, Notices, Renewal } from "./views/under-way.tsx";

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
    <a href={address(to)} aria-current={to === here ? "page" : undefined} onClick={moveOn}>
      {words}
    </a>
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
  const { id } = flight;
  const keeper = useMemo(
    () => (id === null ? undefined : { ...keeperOf(id, flight.document), flownBy: () => flownBy(id) }),
    [flight],
  );
  return (
    <Sheet
      flight={flight}
      {...(keeper ? { keeper } : {})}
      nextHold={solveNext}
      aim={aim.value}
      offerOn={(exercise) => <MeanIt exercise={exercise} />}
      saves={<SaveAsPage flight={flight} />}
      offers={
        <>
          {id !== null && <Entry id={id} />}
          <RouteOffers flight={flight} />
          <OtherFlights flight={flight} />
          {!isMaking() && <StandardChoice flight={flight} />}
          <Maker flight={flight} />
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

/** The flight of the address, once it stands. */
function flightAt(at: Place): Flight | null {
  const stands = flight.value;
  return at === "sheet" && stands && stands.id === shownFlight.value ? stands : null;
}

export function App() {
  useDroppedFiles();
  useEffect(() => void start(), []);
  const at = place.value;
  const shown = flightAt(at);
  const here: Place = at === "sheet" && !shown && !work.value ? "logbook" : at;
  return (
    <div class="page">
      <a class="skip" href="#content">
        To the content
      </a>
      <nav class="top" aria-label="Hindtrack">
        <a class="name" href={address("logbook")}>
          Hindtrack
        </a>
        <Way to="logbook" words="Logbook" here={here} />
        {flight.value && <Way to="sheet" words="Sheet" here={here} />}
        {standing.value.length > 0 && <Way to="habits" words="Habits" here={here} />}
        <Way to="hold" words="Next hold" here={here} />
      </nav>
      <Renewal />
      <AllUnderWay />
      <Notices />
      {question.value && <Columns key={question.value.file} asked={question.value} />}
      <Content>
        {here === "logbook" && <LogbookView />}
        {here === "habits" && <LogbookHabits />}
        {here === "hold" && <NextHold />}
        {shown && <OpenedSheet key={shown.opened} flight={shown} />}
      </Content>
    </div>
  );
}
