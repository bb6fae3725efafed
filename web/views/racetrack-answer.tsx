/** The answer for the next hold: the law as a sentence, the racetrack drawn, its legs, and what the rules of thumb come to. */
import { useRef } from "preact/hooks";
import {
  answerOutlines,
  magneticDirection,
  type RacetrackAnswer,
  racetrackWords,
  trueDirection,
} from "../../src/index.ts";
import { givenWind, HoldGround, useWidth } from "../drawings/index.ts";

export function Answer({ answer }: { answer: RacetrackAnswer }) {
  const box = useRef<HTMLElement>(null);
  const width = useWidth(box);
  const words = racetrackWords(answer);
  const { asked } = answer;
  const degrees = asked.reference === "true" ? trueDirection : magneticDirection;
  const { solved, stillAir } = answerOutlines(answer);
  const wind =
    asked.windKt === 0 ? null : givenWind(asked.windFromDeg - asked.compassDeg, asked.windKt, asked.wind95Kt);
  return (
    <>
      <p class="finding" role="status">
        {words.law}
      </p>
      <figure class="hold" ref={box}>
        {width > 0 && (
          <HoldGround
            name={`The hold from above, course-up: ${words.law}`}
            ident="fix"
            turns={asked.turns}
            upDeg={asked.inboundDeg}
            inbound={degrees(asked.inboundDeg)}
            solved={solved}
            stillAir={stillAir}
            wind={wind}
            windWords={wind ? [`from ${degrees(asked.windFromDeg)}`, `${asked.windKt} kt`] : ["calm"]}
            north={asked.reference === "true" ? "N" : "MN"}
            columnPx={width}
          />
        )}
        <div class="answer">
          {words.legs.length > 0 && (
            <dl>
              {words.legs.map(([name, text]) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{text}</dd>
                </div>
              ))}
            </dl>
          )}
          {words.rules.length > 0 && (
            <>
              <h3>What the rules of thumb come to in this wind</h3>
              <ul>
                {words.rules.map((rule) => (
                  <li key={rule}>{rule}</li>
                ))}
              </ul>
            </>
          )}
          <p>{words.stillAir}</p>
        </div>
      </figure>
      <p class="fine">
        {words.asked} {words.notes.join(" ")}{" "}
        {solved ? "Dashed: what this wind asks for; dotted: still air." : "Dotted: still air."}
      </p>
    </>
  );
}
