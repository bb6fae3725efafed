/** A tendency: one signed figure of an exercise that may come back flight after flight, and what it is measured in. */
import type { DebriefDocument, DocumentExercise } from "../debrief/document.ts";

/** What one exercise says of a tendency, in the tendency's own unit. */
export interface Measured {
  readonly value: number;
  /** Half-width of the 95 % interval; 0 where next to nothing. */
  readonly doubt95: number;
  /** Where it shows most; left out where no moment shows it more than another. */
  readonly at?: Shown | undefined;
}

/** A stretch of the flight, UTC; both ends alike where it is a moment. */
export interface Shown {
  readonly fromUtc: string;
  readonly toUtc: string;
}

export const shownAt = (fromUtc: string | null, toUtc: string | null = fromUtc): Shown | undefined =>
  fromUtc === null ? undefined : { fromUtc, toUtc: toUtc ?? fromUtc };

/** "share": of full scale of the needle; "part": of the wind correction that was needed; "per-min": times a minute. */
export type TendencyUnit = "share" | "part" | "s" | "per-min" | "NM" | "deg";

/** Why an exercise that was meant for it does not tell: the wind is not known well enough, or there was too little of it. */
export type WhyUntold = "wind-not-known" | "little-wind";

export interface Tendency<Exercise extends DocumentExercise = DocumentExercise> {
  /** Kebab-case, public, stable. */
  readonly id: string;
  /** Null: of every kind. */
  readonly kind: Exercise["kind"] | null;
  readonly unit: TendencyUnit;
  /** Neither side is a fault where nothing can be too little: a lead, an overshoot, a rate. */
  readonly oneSided: boolean;
  /** What counts as 1, in the unit. Always above 0. */
  readonly tolerance: (exercise: Exercise) => number;
  /** 0 is as it should be. Null where the exercise does not tell, or its own doubt is too large. */
  readonly measure: (exercise: Exercise, document: DebriefDocument) => Measured | null;
  /** Asked where it does not tell: why, where a pilot would look for it; null where it is no question of this exercise. */
  readonly untold?: (exercise: Exercise, document: DebriefDocument) => WhyUntold | null;
}

/** A tendency of one kind of exercise, put among those of all kinds: the others say nothing of it. */
export function tendency<Kind extends DocumentExercise["kind"]>(
  kind: Kind,
  of: Omit<Tendency<Extract<DocumentExercise, { kind: Kind }>>, "kind">,
): Tendency {
  type Exercise = Extract<DocumentExercise, { kind: Kind }>;
  const { untold } = of;
  return {
    ...of,
    kind,
    measure: (exercise, document) =>
      exercise.kind === kind ? of.measure(exercise as Exercise, document) : null,
    tolerance: (exercise) => of.tolerance(exercise as Exercise),
    untold: (exercise, document) =>
      untold && exercise.kind === kind ? untold(exercise as Exercise, document) : null,
  };
}

/** The mean of what the parts of an exercise say, as the laps of a hold; null where none says anything. */
export function meanOf(parts: readonly (Measured | null)[]): Measured | null {
  const known = parts.filter((part) => part !== null);
  if (known.length === 0) return null;
  const largest = known.reduce((a, b) => (Math.abs(b.value) > Math.abs(a.value) ? b : a));
  const mean = (of: (part: Measured) => number) => known.reduce((sum, p) => sum + of(p), 0) / known.length;
  // the wind's error is shared by all laps: averaging does not shrink it
  return { value: mean((p) => p.value), doubt95: mean((p) => p.doubt95), at: largest.at };
}
