/** The search by ident for points of the log and of the lists of this browser. */
import { useState } from "preact/hooks";
import { distanceNm, type ListedPoint, searchPoints } from "../../src/index.ts";
import { FieldLine } from "./field.tsx";
import { change, said, values } from "./making.ts";
import { listedFix } from "./new-fix.ts";
import { choosable, KIND_WORDS, middleOfFlight, sourceOfPoint } from "./points.ts";
import { mapOf } from "./values.ts";

/** So many are shown: the nearest, of which the right one is nearly always the first. Own choice. */
const MOST_FOUND = 8;

export function Search() {
  const [sought, setSought] = useState("");
  const found = searchPoints(choosable.value, sought, MOST_FOUND);
  const middle = middleOfFlight.value;
  const add = (point: ListedPoint) => {
    const { ident, fixes } = listedFix(point);
    const own = mapOf(values.value.fixes);
    change(["fixes"], { ...own, ...fixes });
    said.value = Object.hasOwn(own, ident)
      ? `${ident} is now the ${KIND_WORDS[point.kind]} of ${sourceOfPoint(point)}.`
      : `${ident} is among the points of the brief.`;
    setSought("");
  };
  return (
    <>
      <div class="asks">
        <FieldLine
          id="brief-search"
          label="Find a point by its ident"
          value={sought}
          put={setSought}
          hint="in the log and in your lists"
        />
      </div>
      {sought.trim() !== "" && found.length === 0 && (
        <p class="fine" role="status">
          Nothing of that ident is in the log or in a list.
        </p>
      )}
      {found.length > 0 && (
        <ul class="fine save found" aria-label="Points found">
          {found.map((point) => (
            <li key={`${point.ident} ${point.kind} ${point.latitude} ${point.longitude}`}>
              <button type="button" onClick={() => add(point)}>
                {point.ident}
              </button>{" "}
              {point.kind === "other" ? "" : `${KIND_WORDS[point.kind]}, `}
              {point.latitude.toFixed(3)}, {point.longitude.toFixed(3)}
              {middle && `, ${Math.round(distanceNm(point, middle))} NM from the flight`}, from{" "}
              {sourceOfPoint(point)}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
