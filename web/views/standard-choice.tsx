/** What the exercises are held against: the school's own file, what the brief names, a published or kept standard, the usual one, or nothing. */
import { TEST_STANDARDS } from "../../src/index.ts";
import { type Flight, orSay } from "../flight.ts";
import type { SchoolStandard } from "../messages.ts";
import { holdAgainst, openAnew } from "../opening.ts";
import { dropStandard, makeUsual } from "../store/standards.ts";

/** As the reader's first choice is called: what was given, in this order. */
function givenWords({ school, standards, document }: Flight): string {
  if (school) return `${school} (the file given)`;
  const named = document.brief?.standard;
  const usual = standards.find((one) => one.usual);
  if (!named) return usual ? `${usual.title} (the usual one)` : "none: the brief names none";
  const title = [...TEST_STANDARDS, ...standards].find(({ id }) => id === named)?.title;
  return title ? `${title} (as the brief says)` : `none: “${named}”, which the brief names, is not here`;
}

/** What is done with the kept standard that the sheet is held against now. */
function OfKept({ kept: { id, title, usual } }: { kept: SchoolStandard }) {
  const then = async (work: Promise<void>, standard?: null) => {
    await orSay(work);
    await openAnew(standard === undefined ? {} : { standard }, false);
  };
  return (
    <>
      {" "}
      <button type="button" onClick={() => void then(makeUsual(usual ? null : id))}>
        {usual ? "No longer the usual one" : "Make it the usual one"}
      </button>
      <button
        type="button"
        aria-label={`Remove the standard ${title} from this browser`}
        onClick={() => void then(dropStandard(id), null)}
      >
        Remove it from this browser
      </button>
    </>
  );
}

export function StandardChoice({ flight }: { flight: Flight }) {
  const { document, request, school, standards } = flight;
  if (!document.exercises.some(({ source }) => source === "brief")) return null;
  const named = document.brief?.standard ?? standards.find(({ usual }) => usual)?.id;
  const own = standards.filter(({ title }) => title !== school);
  const others = [...TEST_STANDARDS, ...own].filter(({ id }) => school || id !== named);
  const chosen = request.standard;
  // what was chosen may be the first choice by now
  const isListed = chosen === "none" || others.some(({ id }) => id === chosen);
  const kept = standards.find(({ id }) => id === document.standard?.id);
  return (
    <div class="fine save screen choice">
      <label>
        Held against{" "}
        <select
          value={isListed && chosen !== null ? chosen : ""}
          onChange={(event) => holdAgainst(event.currentTarget.value || null)}
        >
          <option value="">{givenWords(flight)}</option>
          {others.map(({ id, title }) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
          {(school || named) && <option value="none">nothing: no verdicts</option>}
        </select>
      </label>
      {kept && <OfKept kept={kept} />}
      <p>
        {kept?.usual && "The usual one is what flights are held against whose brief names no standard. "}A
        school’s own standard is a file: drop it on this page, and it is kept for every flight.
      </p>
    </div>
  );
}
