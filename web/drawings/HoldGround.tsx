/** What every plan of a hold stands on: inbound course with the side not to be on, fix, abeam line, the solved and the still-air racetrack, wind, north, scale. */
import type { ComponentChildren } from "preact";
import { type HoldOutline, type WindRecord, windName } from "./contract.ts";
import { Drawing, PlanWindow } from "./Drawing.tsx";
import { type HoldLine, holdFrame, placeIn, pointsOf } from "./holdGeometry.ts";
import { usePanZoom } from "./panZoom.ts";
import { line, pathThrough } from "./path.ts";
import { Coast, FixSign, NorthArrow, ScaleBar } from "./planSigns.tsx";
import { ticksWithin } from "./rows.ts";
import { fixedScales, PAPER_PX, PX_PER_KNOT, PX_PER_MM } from "./scale.ts";
import { surroundings } from "./surroundings.ts";
import { WindSign } from "./WindArrow.tsx";
import type { Point } from "./windGeometry.ts";
import { millimetreText } from "./words.ts";

export type Place = (along: number, across: number) => Point;

export interface HoldGroundProps {
  readonly name: string;
  readonly ident: string;
  readonly turns: "left" | "right";
  /** The inbound course, in the reference of the wind. */
  readonly upDeg: number;
  /** The inbound course in words, as in "247°M". */
  readonly inbound: string;
  readonly solved: HoldOutline | null;
  readonly stillAir: HoldOutline | null;
  readonly wind: WindRecord | null;
  /** The wind in one or two short lines. */
  readonly windWords: readonly string[];
  /** What north is, as in "N". */
  readonly north?: string;
  /** Where a dimension stands beside the course, NM along it: the words of the side keep clear of it. */
  readonly clearOfNm?: number | null;
  /** Width that there is for it; on paper that of the page. */
  readonly columnPx: number;
  /** Lines that the frame must hold besides the racetracks. */
  readonly flown?: readonly HoldLine[];
  /** What was flown, under the line of what was asked; and the marks over both. */
  readonly lines?: (place: Place) => ComponentChildren;
  /** More to be said under the plan. */
  readonly words?: string;
  readonly marks?: (place: Place, width: number) => ComponentChildren;
}

const TICK_PX = 5;
const TICK_NM = 0.5;
/** The words of the side stand high up, clear of where laps roll out; else farther down, as shares of the drawn course. */
const SIDE_WORDS_AT = [0.36, 0.76, 0.22] as const;
/** Half their length, and a line of other words. */
const SIDE_WORDS_PX = 54;

export function HoldGround(props: HoldGroundProps) {
  const {
    name,
    ident,
    turns,
    upDeg,
    inbound,
    solved,
    stillAir,
    wind,
    windWords,
    columnPx,
    flown = [],
  } = props;
  const { narrow, paper } = surroundings().value;
  const windHalf = wind?.speedKt ? (wind.speedKt * PX_PER_KNOT) / 2 : 8;
  const windY = Math.max(30, windHalf + 14);
  const fixedMm = fixedScales(narrow).mmPerMileOfHold;
  const racetracks = [solved, stillAir].flatMap((outline) => (outline ? [outline] : []));
  const frame = holdFrame([...racetracks, ...flown], {
    turns,
    columnPx: paper ? PAPER_PX : columnPx,
    fixedMm,
    abovePx: windY + windHalf + 22 + 15 * windWords.length + 26,
  });
  const { width, height } = frame;
  const pan = usePanZoom(width, height);
  const moved = pan.moved && !paper;
  const place = placeIn(frame, moved ? pan.view : { zoom: 1, x: 0, y: 0 });
  const [fixX, fixY] = place(0, 0);
  const foot = place(frame.bottomNm, 0);
  const side = turns === "right" ? 1 : -1;
  const anchor = side === 1 ? "end" : "start";
  const fromEdge = Math.max(52, windHalf + 10);
  const windX = side === 1 ? fromEdge : width - fromEdge;
  const px = frame.pxPerMile * (moved ? pan.view.zoom : 1);
  const isFixed = !moved && frame.mmPerMile === fixedMm;
  const scale = `1 NM = ${millimetreText(px / PX_PER_MM)}`;
  const taken = props.clearOfNm == null ? null : place(props.clearOfNm, 0)[1];
  const heights = SIDE_WORDS_AT.map((share) => fixY + share * (foot[1] - fixY));
  const sideWordsY =
    heights.find((y) => taken === null || Math.abs(y - taken) > SIDE_WORDS_PX) ?? heights[0]!;
  const abeam = place(0, side * Math.max(side * (side === 1 ? frame.rightNm : frame.leftNm), 0.6));
  return (
    <div class="hold-plan">
      <PlanWindow name={name} handlers={pan.handlers}>
        <Drawing kind="plan" name={name} width={width} height={height}>
          {ticksWithin(frame.bottomNm, frame.topNm, TICK_NM).map((nm) => {
            const [, y] = place(nm, 0);
            const x = side === 1 ? width : 0;
            return <path key={`a${nm}`} class="axis" d={line(x, y, x - side * TICK_PX, y)} />;
          })}
          {ticksWithin(frame.leftNm, frame.rightNm, TICK_NM).map((nm) => {
            const [x] = place(0, nm);
            return <path key={`c${nm}`} class="axis" d={line(x, 0, x, TICK_PX)} />;
          })}
          <path class="iso" d={line(fixX, fixY, abeam[0], abeam[1])} />
          <path class="course" d={pathThrough([[fixX, fixY], place(frame.topNm, 0)])} />
          <Coast from={foot} to={[fixX, fixY]} side={side === 1 ? -1 : 1} />
          <text
            class="lab-i halo"
            transform={`translate(${(foot[0] - side * 11).toFixed(1)} ${sideWordsY.toFixed(1)}) rotate(${-90 * side})`}
            text-anchor="middle"
          >
            non-holding side
          </text>
          {stillAir && <path class="still" d={pathThrough(pointsOf(stillAir, place))} />}
          {props.lines?.(place)}
          {solved && <path class="solved" d={pathThrough(pointsOf(solved, place))} />}
          {props.marks?.(place, width)}
          <text
            class="lab-i halo"
            x={abeam[0] + side * 5}
            y={abeam[1] + 4}
            text-anchor={side === 1 ? "start" : "end"}
          >
            abeam
          </text>
          <FixSign x={fixX} y={fixY} ident={ident} dx={-12 * side} dy={-3} anchor={anchor} />
          <text class="lab halo" x={fixX - 12 * side} y={fixY + 12} text-anchor={anchor}>
            inbound {inbound}
          </text>
          {wind && (
            <g>
              <title>{windName(wind)}</title>
              <WindSign wind={wind} upTrueDeg={upDeg} trackTrueDeg={upDeg} x={windX} y={windY} />
            </g>
          )}
          {windWords.map((words, i) => (
            <text
              key={words}
              class="lab wi halo"
              x={side === 1 ? 2 : width - 2}
              y={windY + windHalf + 22 + 15 * i}
              text-anchor={side === 1 ? "start" : "end"}
            >
              {words}
            </text>
          ))}
          <NorthArrow
            x={side === 1 ? width - 36 : 36}
            y={38}
            upTrueDeg={upDeg}
            {...(props.north ? { words: props.north } : {})}
          />
          <ScaleBar x={8} y={height - 10} pxPerMile={px} words={scale} />
        </Drawing>
      </PlanWindow>
      <p class="drawing-scale">
        Course-up.{" "}
        {isFixed ? (
          `Fixed scale: ${scale}.`
        ) : (
          <>
            <b>{moved ? "Moved by hand" : "Too large for the fixed scale"}:</b> {scale}, the fixed scale is{" "}
            {millimetreText(fixedMm)}.
          </>
        )}
        {props.words}
      </p>
    </div>
  );
}
