/** The points of the brief, each with its place; and the ways to more. */
import { useEffect, useState } from "preact/hooks";
import { POINT_KINDS } from "../../src/index.ts";
import { FieldLine } from "./field.tsx";
import type { Choice } from "./fields.ts";
import { Lists } from "./lists.tsx";
import { change, freeIdent, reading, renameFix, said, values } from "./making.ts";
import { newFix } from "./new-fix.ts";
import { fieldId, picking } from "./picking.ts";
import { KIND_WORDS, middleOfFlight } from "./points.ts";
import { complaintsAt } from "./reading.ts";
import { Search } from "./search.tsx";
import { mapOf, placeNote, placeText, textOf, typedPlace, type Values } from "./values.ts";

const KINDS: readonly Choice[] = [
  ["", KIND_WORDS.waypoint],
  ...POINT_KINDS.filter((kind) => kind !== "waypoint" && kind !== "other").map(
    (kind): Choice => [kind, KIND_WORDS[kind]],
  ),
  ["other", "other"],
];

function fixPlace(fix: Values): string {
  if (typeof fix.at === "string") return fix.at;
  return typeof fix.lat === "number" && typeof fix.lon === "number" ? placeText(fix.lat, fix.lon) : "";
}

/** A row stays the same row under another ident: who types on in it must not lose the field. */
const rowKeys = new Map<string, number>();
function rowKey(ident: string): number {
  const key = rowKeys.get(ident) ?? Math.max(0, ...rowKeys.values()) + 1;
  rowKeys.set(ident, key);
  return key;
}

/** The ident is taken over when its field is left: letters on the way to it are idents of nothing. */
function Ident({ ident }: { ident: string }) {
  const [typed, setTyped] = useState(ident);
  useEffect(() => setTyped(ident), [ident]);
  const taken = typed !== ident && Object.hasOwn(mapOf(values.value.fixes), typed);
  const commit = () => {
    const name = typed.trim();
    if (name === "" || name === ident || taken) return setTyped(ident);
    rowKeys.set(name, rowKey(ident));
    rowKeys.delete(ident);
    renameFix(ident, name);
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
      <Ident ident={ident} />
      <FieldLine
        id={fieldId(["fixes", ident, "at"])}
        label="Latitude, longitude"
        value={place}
        put={putPlace}
        hint="35.6000, 172.3000"
        needed
        wrong={wrongPlace}
        note={placeNote(place)}
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

export function Points() {
  const idents = Object.keys(mapOf(values.value.fixes));
  const place = () => {
    const { ident, fixes } = newFix(middleOfFlight.value ?? { latitude: 0, longitude: 0 }, freeIdent());
    const { [ident]: fix } = fixes;
    change(["fixes"], {
      ...mapOf(values.value.fixes),
      [ident]: { ...mapOf(fix), lat: undefined, lon: undefined, at: "" },
    });
    requestAnimationFrame(() => {
      const field = document.getElementById(fieldId(["fixes", ident, "ident"]));
      if (field instanceof HTMLInputElement) field.select();
    });
  };
  return (
    <section aria-labelledby="brief-points">
      <h3 id="brief-points">Points</h3>
      <ul class="fixes">
        {idents.map((ident) => (
          <FixRow key={rowKey(ident)} ident={ident} />
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
