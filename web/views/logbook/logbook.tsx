/** All flights: the first view of the page. */
import { CAUTION } from "../../../src/index.ts";
import { adding } from "../../adding.ts";
import { rows, standing } from "../../logbook.ts";
import { address } from "../../place.ts";
import { Bin, PutBack } from "./bin.tsx";
import { MoreDrop } from "./drop.tsx";
import { FirstTime } from "./first-time.tsx";
import { Keep } from "./keep.tsx";
import { List } from "./list.tsx";
import { FoldedSamples } from "./samples.tsx";
import { SearchPanel } from "./search.tsx";
import { Ticked } from "./ticked.tsx";

function Flights() {
  return (
    <>
      <div class="rule" />
      <header class="bookhead">
        <h1 tabIndex={-1}>Logbook</h1>
        <MoreDrop />
      </header>
      <SearchPanel />
      <PutBack />
      <Ticked />
      <List />
      <FoldedSamples />
      <Keep />
      <p class="next">
        For the next flight: <a href={address("hold")}>a hold solved for a wind</a>, without any file.
      </p>
    </>
  );
}

export function LogbookView() {
  if (rows.value === null) return <div class="rule" />;
  const isEmpty = standing.value.length === 0 && !adding.value;
  return (
    <>
      {isEmpty ? (
        <>
          <PutBack />
          <FirstTime />
        </>
      ) : (
        <Flights />
      )}
      <Bin />
      <div class="priv">
        <p>
          Nothing leaves this machine. The files are read in this page, and no request is made. Flights, with
          all that is noted on them, are kept in this browser until you delete them.
        </p>
        <p class="c">{CAUTION}</p>
      </div>
    </>
  );
}
