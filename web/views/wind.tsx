/** The wind of the flight: in a sentence, leg by leg with its doubt, and as a circle of velocities. */
import {
  alongWords,
  clock,
  count,
  type DebriefDocument,
  type DocumentLeg,
  type FlightSeries,
  heightWords,
  isFull,
  isLight,
  restsOn,
  secondsBetween,
  trueDirection,
  windSentence,
} from "../../src/index.ts";
import { bound } from "../bound.ts";
import {
  InTurn,
  shownByHeight,
  VelocityCircle,
  WindArrow,
  WindChart,
  WindHeight,
} from "../drawings/index.ts";

function WindCells({ leg }: { leg: DocumentLeg }) {
  const { wind } = leg;
  if (isFull(wind)) {
    const doubt = wind.ellipse95Kt ? ` ± ${wind.ellipse95Kt.majorKt.toFixed(1)}` : "";
    return (
      <>
        <td class="r">{isLight(wind) ? "not sure" : trueDirection(wind.fromTrueDeg)}</td>
        <td class="r">
          {Math.round(wind.speedKt)}
          <span class="u">{doubt}</span>
        </td>
      </>
    );
  }
  const doubt = wind.along95Kt === null ? "" : ` ± ${Math.round(wind.along95Kt)}`;
  return (
    <td colSpan={2}>
      {wind.alongKt === null
        ? "cannot be told"
        : `${alongWords(wind.alongKt)}${doubt}; across: cannot be told`}
    </td>
  );
}

/** Shorter straights, as between the swings of a chase, would only lengthen the table. */
const SHORTEST_S = 60;
const ROWS_A_TASK = 40;

function Legs({ legs }: { legs: readonly DocumentLeg[] }) {
  const all = legs.filter((leg) => leg.kind === "straight");
  const straights = all.filter((leg) => secondsBetween(leg.startUtc, leg.endUtc) >= SHORTEST_S);
  const turns = legs.length - all.length;
  const shorter = all.length - straights.length;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard
    <section class="scroll" tabIndex={0} aria-label="Wind on the straights">
      <table class="data straights">
        <caption>
          Straights of a minute or more, north-up, 10 kt = 5 mm
          {turns > 0 && `; with ${turns} ${turns === 1 ? "turn" : "turns"}`}
          {turns > 0 && shorter > 0 && ` and ${shorter} shorter`}
          {turns > 0 && " between them"}
        </caption>
        <thead>
          <tr>
            <th>
              <span class="vh">Arrow</span>
            </th>
            <th>UTC</th>
            <th class="r">From</th>
            <th class="r">Speed, kt</th>
            <th>Rests on</th>
          </tr>
        </thead>
        <tbody>
          <InTurn each={ROWS_A_TASK}>
            {straights.map((leg) => (
              <tr key={leg.startUtc}>
                <td>
                  <WindArrow wind={leg.wind} trackTrueDeg={leg.trackTrueDeg} />
                </td>
                <td>
                  {clock(leg.startUtc)} to {clock(leg.endUtc)}
                  <br />
                  <span class="u">
                    track {trueDirection(leg.trackTrueDeg)}
                    {leg.altitudeFt !== null && `, ${heightWords(leg.altitudeFt)}`}
                  </span>
                </td>
                <WindCells leg={leg} />
                <td class="cite">{restsOn(leg.wind)}</td>
              </tr>
            ))}
          </InTurn>
        </tbody>
      </table>
    </section>
  );
}

export function WindOfTheFlight({ document, series }: { document: DebriefDocument; series: FlightSeries }) {
  return (
    <section class="ex full" id="wind" aria-labelledby="wind-title">
      <div class="no">
        <b class="w">w</b>
        <span>from {count(document.log.used)} positions</span>
      </div>
      <div class="body">
        <InTurn>
          <h2 id="wind-title">The wind</h2>
          <p class="finding">{bound(windSentence(document))}</p>
          {document.legs.some((leg) => leg.wind.knowledge !== "none") && (
            <figure class="wtime">
              <WindChart legs={document.legs} />
              <figcaption>
                A stroke a leg, heavy on straights and fine in turns, with its 95 % doubt as a band: the
                directions and speeds that the oval of the arrow reaches. Where the oval holds calm, and where
                the wind is not known, the paper is grey. A dashed stroke in a dashed frame is only the part
                along the track; the wind is at least that.
              </figcaption>
            </figure>
          )}
          {document.legs.length > 0 && (
            <div class="wsec">
              <Legs legs={document.legs} />
              <div>
                <InTurn>
                  {document.legs.some((leg) => leg.kind === "turn") && (
                    <figure>
                      <VelocityCircle document={document} series={series} />
                      <figcaption>
                        Ground velocities in the turns, north-up, drawn from 0.{" "}
                        {document.wind?.knowledge === "full"
                          ? "In still air they would lie on the dotted circle; the wind moves the whole circle to the dashed one. The arrow is the wind, its oval the 95 % doubt. Hollow dots were flown 1,500 ft and more above or below it."
                          : "They are too small a part of a circle to tell where its middle lies, and so the wind."}
                      </figcaption>
                    </figure>
                  )}
                  {shownByHeight(document.windByHeight) && (
                    <figure>
                      <div>
                        <WindHeight bands={document.windByHeight} />
                      </div>
                      <figcaption>
                        The wind against height, its mean over each band while direction and speed were known,
                        with 95 % doubt; heights by GPS. A wind too light for a direction has a speed alone.
                      </figcaption>
                    </figure>
                  )}
                </InTurn>
              </div>
            </div>
          )}
        </InTurn>
      </div>
    </section>
  );
}
