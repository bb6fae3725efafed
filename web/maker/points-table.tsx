/** The points of the brief, each with its place; and the search for more in the log and in the lists of this browser. */
import { useRef, useState } from "preact/hooks";
import { distanceNm, type ListedPoint, searchPoints } from "../../src/index.ts";
import { FieldLine } from "./field.tsx";
import type { Choice } from "./fields.ts";
import { change, freeIdent, reading, renameFix, said, values } from "./making.ts";
import { listedFix, newFix } from "./new-fix.ts";
import { fieldId, picking } from "./picking.ts";
import {
  addLists,
  counted,
  known,
  lists,
  listWords,
  middleOfFlight,
  removeList,
  sourceOfPoint,
} from "./points.ts";
import { complaintsAt } from "./reading.ts";
import { mapOf, placeText, textOf, typedPlace, type Values } from "./values.ts";

const KINDS: readonly Choice[] = [
  ["", "waypoint"],
  ["vor", "VOR"],
  ["ndb", "NDB"],
  ["dme", "DME"],
  ["runway", "runway"],
  ["other", "other"],
];

function fixPlace(fix: Values): string {
  if (typeof fix.at === "string") return fix.at;
  return typeof fix.lat === "number" && typeof fix.lon === "number" ? placeText(fix.lat, fix.lon) : "";
}

/** The ident is taken over when its field is left: letters on the way to it are idents of nothing. */
function Ident({ ident }: { ident: string }) {
  const [typed, setTyped] = useState(ident);
  const taken = typed !== ident && Object.hasOwn(mapOf(values.value.fixes), typed);
  const commit = () => {
    const name = typed.trim();
    if (name !== "" && name !== ident && !taken) renameFix(ident, name);
    else setTyped(ident);
  };
  return (
    <FieldLine
      id={fieldId(["fixes", ident, "ident"])}
      label="Ident"
      value={typed}
      put={setTyped}
      wrong={taken ? ["There is a point of that ident already."] : []}
      onLeave={commit}
    />
  );
}

function FixRow({ ident }: { ident: string }) {
  const fix = mapOf(mapOf(values.value.fixes)[ident]);
  const put = (key: string) => (text: string) => change(["fixes", ident, key], text);
  const putPlace = (text: string) => {
    const { lat: _, lon: __, ...rest } = fix;
    change(["fixes", ident], { ...rest, at: text });
  };
  const place = fixPlace(fix);
  const wrongPlace =
    typedPlace(place) || place === "" ? [] : ["Write latitude and longitude, as in 35.6000, 172.3000."];
  const wrong = (key: string) => complaintsAt(reading.value, ["fixes", ident, key]);
  const remove = () => {
    const { [ident]: _, ...rest } = mapOf(values.value.fixes);
    change(["fixes"], rest);
    said.value = `${ident} was taken out.`;
  };
  return (
    <li class="asks fix-row">
      <Ident key={ident} ident={ident} />
      <FieldLine
        id={fieldId(["fixes", ident, "at"])}
        label="Latitude, longitude"
        value={place}
        put={putPlace}
        hint="35.6000, 172.3000"
        needed
        wrong={wrongPlace}
      />
      <FieldLine
        id={fieldId(["fixes", ident, "kind"])}
        label="Kind"
        value={textOf(fix.kind) === "waypoint" ? "" : textOf(fix.kind)}
        put={put("kind")}
        choices={KINDS}
        wrong={wrong("kind")}
      />
      <FieldLine
        id={fieldId(["fixes", ident, "declination"])}
        label="Declination, ° east"
        value={textOf(fix.declination)}
        put={put("declination")}
        hint="of a station; -3 for 3°W"
        wrong={wrong("declination")}
      />
      <p class="fine save">
        <button type="button" onClick={remove} aria-label={`Take out the point ${ident}`}>
          Take out
        </button>
      </p>
    </li>
  );
}

/** So many are shown: the nearest, of which the right one is nearly always the first. Own choice. */
const MOST_FOUND = 8;

function Search() {
  const [sought, setSought] = useState("");
  const found = searchPoints(known.value, sought, MOST_FOUND);
  const middle = middleOfFlight.value;
  const add = (point: ListedPoint) => {
    const { ident, fixes } = listedFix(point);
    change(["fixes"], { ...mapOf(values.value.fixes), ...fixes });
    said.value = `${ident} is among the points of the brief.`;
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
            <li key={`${point.ident} ${point.latitude} ${point.longitude}`}>
              <button type="button" onClick={() => add(point)}>
                {point.ident}
              </button>{" "}
              {point.kind === "other" ? "" : `${point.kind}, `}
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

function Lists() {
  const input = useRef<HTMLInputElement>(null);
  const chosen = () => {
    void addLists([...(input.current?.files ?? [])]);
    if (input.current) input.current.value = "";
  };
  return (
    <div class="fine save">
      <input
        ref={input}
        class="vh"
        type="file"
        multiple
        tabIndex={-1}
        aria-label="Lists of points"
        onChange={chosen}
      />
      <p>
        <button type="button" onClick={() => input.current?.click()}>
          Add a list of points
        </button>
        A table (ident, lat, lon; perhaps kind, elevation, declination, end lat, end lon), GPX or KML. It
        stays in this browser.
      </p>
      <ul aria-label="Lists in this browser">
        {lists.value.map((list) => (
          <li key={list.name}>
            {list.name}: {counted(list)}.{" "}
            <button
              type="button"
              onClick={() => void removeList(list.name)}
              aria-label={`Remove the list ${list.name}`}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <div role="status">
        {listWords.value.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </div>
  );
}

export function Points() {
  const idents = Object.keys(mapOf(values.value.fixes));
  const place = () => {
    const { ident, fixes } = newFix(middleOfFlight.value ?? { latitude: 0, longitude: 0 }, freeIdent());
    const { [ident]: fix } = fixes;
    change(["fixes"], {
      ...mapOf(values.value.fixes),
      [ident]: { ...mapOf(fix), lat: undefined, lon: undefined, at: "" },
    });
  };
  return (
    <section aria-labelledby="brief-points">
      <h3 id="brief-points">Points</h3>
      <ul class="fixes">
        {idents.map((ident) => (
          <FixRow key={ident} ident={ident} />
        ))}
      </ul>
      <Search />
      <p class="fine save">
        <button type="button" onClick={place}>
          Type a new point
        </button>
        <button
          type="button"
          aria-pressed={picking.value !== null && picking.value.path === null}
          onClick={() => {
            picking.value = picking.value ? null : { path: null, words: "a new point" };
          }}
        >
          Pick a point on the plan
        </button>
      </p>
      <Lists />
    </section>
  );
}
