/** Parts of a long page, each put up in a task of its own, so that the page answers while it grows. */
import { computed, signal } from "@preact/signals";
import { type ComponentChildren, toChildArray } from "preact";
import { useLayoutEffect, useState } from "preact/hooks";
import { surroundings } from "./surroundings.ts";

const unfinished = signal(0);
/** Whether parts of the page are still to come. */
export const isGrowing = computed(() => unfinished.value > 0);

const waiting: (() => void)[] = [];
const channel = new MessageChannel();
channel.port1.onmessage = () => waiting.shift()?.();

/** Runs `work` in a later task; what it gives takes that back. Unlike a timer it is not slowed in a hidden tab. */
function soon(work: () => void): () => void {
  waiting.push(work);
  channel.port2.postMessage(null);
  return () => {
    const at = waiting.indexOf(work);
    if (at >= 0) waiting[at] = () => undefined;
  };
}

/** Draws in a task of its own, on paper at once; `draw` gives what takes the drawing back, and so does this. */
export function drawnLater(draw: () => () => void): () => void {
  if (surroundings().peek().paper) return draw();
  let erase: (() => void) | null = null;
  unfinished.value++;
  const forget = soon(() => {
    erase = draw();
    unfinished.value--;
  });
  return () => {
    if (erase) return erase();
    forget();
    unfinished.value--;
  };
}

/** `each`: so many children a task. Paper gets all at once. */
export function InTurn({ children, each = 1 }: { children: ComponentChildren; each?: number }) {
  const parts = toChildArray(children);
  const [shown, setShown] = useState(each);
  const isWhole = shown >= parts.length || surroundings().value.paper;
  useLayoutEffect(() => {
    if (isWhole) return;
    unfinished.value++;
    return () => {
      unfinished.value--;
    };
  }, [isWhole]);
  useLayoutEffect(() => {
    if (!isWhole) return soon(() => setShown(shown + each));
  }, [isWhole, shown, each]);
  return <>{isWhole ? parts : parts.slice(0, shown)}</>;
}
