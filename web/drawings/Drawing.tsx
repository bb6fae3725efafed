/** The frame of every drawing in lines: its size in px, its name for those who do not see it; and the window of a plan that moves. */
import type { ComponentChildren } from "preact";
import type { usePanZoom } from "./panZoom.ts";

export function Drawing(props: {
  /** Class beside `drawing`. */
  kind: string;
  name: string;
  width: number;
  height: number;
  children: ComponentChildren;
}) {
  const { kind, name, width, height, children } = props;
  return (
    <svg
      class={`drawing ${kind}`}
      role="img"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      aria-label={name}
    >
      <title>{name}</title>
      {children}
    </svg>
  );
}

/** Takes the keys and the pointer that move the plan inside it. */
export function PlanWindow(props: {
  name: string;
  handlers: ReturnType<typeof usePanZoom>["handlers"];
  children: ComponentChildren;
}) {
  const { name, handlers, children } = props;
  return (
    <section
      class="plan-window"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the plan is moved by keys, so it must take focus
      tabIndex={0}
      aria-label={`${name}. Arrow keys move it, plus and minus zoom, 0 goes back.`}
      {...handlers}
    >
      {children}
    </section>
  );
}
