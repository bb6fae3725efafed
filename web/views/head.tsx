/** What was flown, when, by what log; the wind of the day with its doubt; and the ways to save it. */
import type { ComponentChildren } from "preact";
import type { Carried, DebriefDocument } from "../../src/index.ts";
import { shownName, windDoubt, windHeadline } from "../../src/index.ts";
import { WindArrow } from "../drawings/index.ts";
import { aircraftWords, flownByWords, logWords, timeWords } from "../head-words.ts";
import { Save } from "./save.tsx";

function WindOfTheDay({ wind }: { wind: NonNullable<DebriefDocument["wind"]> }) {
  return (
    <div class="windday">
      <WindArrow wind={wind} />
      <div>
        <strong>{windHeadline(wind)}</strong>
        {windDoubt(wind)}
      </div>
    </div>
  );
}

export function Head({ flight, saves }: { flight: Carried; saves: ComponentChildren }) {
  const { document } = flight;
  return (
    <header class="head">
      <div>
        <h1 tabIndex={-1}>{shownName(document.brief?.title || document.log.name)}</h1>
        <p class="what">
          {timeWords(document.log)}
          <br />
          {document.flownBy && (
            <>
              {flownByWords(document.flownBy)}
              <br />
            </>
          )}
          {aircraftWords(document)}
          <br />
          {logWords(document.log)}{" "}
          <a href="#log" class="screen">
            What was dropped
          </a>
        </p>
        <Save flight={flight} more={saves} />
      </div>
      {document.wind && <WindOfTheDay wind={document.wind} />}
    </header>
  );
}
