/** The flight from above, on which points are picked: by a click, or by a cross that the arrow keys move. */
import { useMemo, useRef, useState } from "preact/hooks";
import type { Position } from "../../src/index.ts";
import {
  FixSign,
  FlownLine,
  HOME,
  NorthArrow,
  rowsAfterSilence,
  ScaleBar,
  useWidth,
  type View,
  zoomAbout,
} from "../drawings/index.ts";
import type { Flight } from "../flight.ts";
import { picked, picking } from "./picking.ts";
import { type Ground, groundOf, viewed } from "./plan-geometry.ts";
import { Known, Meant, pointsOn } from "./plan-marks.tsx";

/** A click this near to a known point means it, px: a fingertip. */
const SNAP_PX = 12;
const STEP_PX = 8;
export function Plan({ flight }: { flight: Flight }) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const { path } = flight.series;
  const ground = useMemo(() => (width > 0 ? groundOf(path, width) : null), [path, width]);
  return (
    <div ref={box} id="brief-plan" class="plan-pick">
      {ground && <Drawn flight={flight} ground={ground} />}
    </div>
  );
}

/** Closer by this with each key or turn of the wheel. Own choice. */
const FACTOR = 1.5;
/** A click that moves less than this is no dragging, px. */
const STILL_PX = 4;

interface Grip {
  readonly x: number;
  readonly y: number;
  readonly view: View;
  readonly moved: boolean;
}

/** Where the pointer is on the plan, px. */
const onPlan = (event: MouseEvent): readonly [number, number] => {
  const frame = (event.currentTarget as Element).getBoundingClientRect();
  return [event.clientX - frame.left, event.clientY - frame.top];
};

function Drawn({ flight, ground: whole }: { flight: Flight; ground: Ground }) {
  const { path } = flight.series;
  const [view, setView] = useState<View>(HOME);
  const grip = useRef<Grip | null>(null);
  const ground = useMemo(() => viewed(whole, view), [whole, view]);
  const zoom = (factor: number, at: readonly [number, number] = [whole.width / 2, whole.height / 2]) =>
    setView(zoomAbout(view, factor, at[0], at[1]));
  const [cross, setCross] = useState<readonly [number, number] | null>(null);
  const flown = useMemo(
    () =>
      Array.from(path.latitude, (latitude, i) => ground.toPx({ latitude, longitude: path.longitude[i]! })),
    [path, ground],
  );
  const { own, others } = pointsOn(ground);
  const pick = (x: number, y: number) => {
    const near = [...own, ...others]
      .map((point) => ({ point, away: Math.hypot(ground.toPx(point)[0] - x, ground.toPx(point)[1] - y) }))
      .filter(({ away }) => away <= SNAP_PX)
      .sort((a, b) => a.away - b.away)[0]?.point;
    picked(near ?? null, near ?? ground.toPlace(x, y));
  };
  const key = (event: KeyboardEvent) => {
    const at = cross ?? [ground.width / 2, ground.height / 2];
    const step = event.shiftKey ? 1 : STEP_PX;
    const moves: Record<string, readonly [number, number]> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    };
    const move = moves[event.key];
    if (move) setCross([at[0] + move[0], at[1] + move[1]]);
    else if (event.key === "+" || event.key === "=") zoom(FACTOR, at);
    else if (event.key === "-") zoom(1 / FACTOR, at);
    else if (event.key === "0") setView(HOME);
    else if (event.key === "Enter" || event.key === " ") pick(at[0], at[1]);
    else if (event.key === "Escape") {
      setCross(null);
      picking.value = null;
    } else return;
    event.preventDefault();
  };
  const wanted = picking.value;
  const words = wanted
    ? `Click where it is: ${wanted.words}.`
    : "Click a place, or a point that is shown, to take it among the points of the brief.";
  return (
    <>
      <p class="fine save">
        <span aria-hidden="true">{words} </span>
        <button type="button" onClick={() => zoom(FACTOR)}>
          Closer
        </button>
        <button type="button" onClick={() => zoom(1 / FACTOR)}>
          Farther
        </button>
        <button type="button" onClick={() => setView(HOME)} disabled={view === HOME}>
          Whole flight
        </button>
      </p>
      <svg
        class="drawing plan"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the cross is moved by keys, so the plan must take focus
        tabIndex={0}
        width={ground.width}
        height={ground.height}
        viewBox={`0 0 ${ground.width} ${ground.height}`}
        aria-label={`The flight from above, north-up. ${words} Arrow keys move a cross, with shift finely; Enter picks; plus and minus zoom, 0 shows the whole flight.`}
        onKeyDown={key}
        onBlur={() => setCross(null)}
        onWheel={(event) => {
          if (!event.ctrlKey) return;
          event.preventDefault();
          zoom(Math.exp(-event.deltaY / 300), onPlan(event));
        }}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          grip.current = { x: event.clientX, y: event.clientY, view, moved: false };
        }}
        onPointerMove={(event) => {
          const from = grip.current;
          if (!from) return;
          const [dx, dy] = [event.clientX - from.x, event.clientY - from.y];
          if (!from.moved && Math.hypot(dx, dy) < STILL_PX) return;
          grip.current = { ...from, moved: true };
          setView({ ...from.view, x: from.view.x + dx, y: from.view.y + dy });
        }}
        onPointerCancel={() => {
          grip.current = null;
        }}
        onPointerUp={(event) => {
          const from = grip.current;
          grip.current = null;
          if (from && !from.moved) pick(...onPlan(event));
        }}
      >
        <Meant ground={ground} />
        <FlownLine points={flown} silent={rowsAfterSilence(path.timeMs)} kind="thin" />
        {others.map((point) => (
          <Known key={`${point.ident} ${point.latitude}`} point={point} ground={ground} />
        ))}
        {own.map((fix) => {
          const [x, y] = ground.toPx(fix);
          return <FixSign key={fix.ident} x={x} y={y} ident={fix.ident} />;
        })}
        {cross && <path class="dim" d={crossPath(cross)} />}
        <NorthArrow x={ground.width - 20} y={38} upTrueDeg={0} />
        <ScaleBar x={8} y={ground.height - 8} pxPerMile={ground.pxPerMile} words="" />
      </svg>
      <p class="vh" role="status">
        {cross && crossWords(ground.toPlace(cross[0], cross[1]))}
      </p>
    </>
  );
}

const crossPath = ([x, y]: readonly [number, number]): string =>
  `M${x - 12} ${y}H${x + 12}M${x} ${y - 12}V${y + 12}`;

const crossWords = ({ latitude, longitude }: Position): string =>
  `${latitude.toFixed(3)}, ${longitude.toFixed(3)}`;
