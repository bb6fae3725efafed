/** What the exercises are held against: the school's own file, what the brief names, a published standard, or nothing. */
import { TEST_STANDARDS } from "../../src/index.ts";
import type { Flight } from "../flight.ts";
import { holdAgainst } from "../opening.ts";

/** As the reader's first choice is called: what was given, in this order. */
function givenWords({ school, document }: Flight): string {
  if (school) return `${school} (the file given)`;
  const named = document.brief?.standard;
  if (!named) return "none: the brief names none";
  const title = TEST_STANDARDS.find(({ id }) => id === named)?.title;
  return title ? `${title} (as the brief says)` : `none: “${named}”, which the brief names, is not here`;
}

export function StandardChoice({ flight }: { flight: Flight }) {
  const { document, request, school } = flight;
  if (!document.exercises.some(({ source }) => source === "brief")) return null;
  const others = TEST_STANDARDS.filter(({ id }) => school || id !== document.brief?.standard);
  return (
    <p class="fine save screen choice">
      <label>
        Held against{" "}
        <select
          value={request.standard ?? ""}
          onChange={(event) => holdAgainst(event.currentTarget.value || null)}
        >
          <option value="">{givenWords(flight)}</option>
          {others.map(({ id, title }) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
          {(school || document.brief?.standard) && <option value="none">nothing: no verdicts</option>}
        </select>
      </label>{" "}
      A school’s own standard is a file: drop it on this page.
    </p>
  );
}
