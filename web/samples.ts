/** The made-up flights that come with the page: logs and briefs lie beside it and are fetched when asked for. */

const FOUND = import.meta.glob<string>("../samples/*/{log.gpx,brief.yaml}", {
  query: "?url",
  import: "default",
  eager: true,
});

/** On a sample in the logbook, so that it is told from what somebody flew. */
export const SAMPLE_TAG = "made up";

export interface Sample {
  /** What it is of, as a heading. */
  readonly of: "Courses" | "Arcs and descents" | "Holds" | "Approaches";
  /** The name of its folder. */
  readonly name: string;
  readonly title: string;
  readonly words: string;
}

export const SAMPLES: readonly Sample[] = [
  {
    of: "Courses",
    name: "calm-and-tidy",
    title: "Calm and tidy",
    words: "light wind, four courses held",
  },
  {
    of: "Courses",
    name: "strong-crosswind-badly-corrected",
    title: "A strong crosswind",
    words: "the track turns off long before the needle says so",
  },
  {
    of: "Courses",
    name: "needle-chased",
    title: "The needle chased",
    words: "a turn after every swing of the needle",
  },
  {
    of: "Arcs and descents",
    name: "arc-to-a-radial",
    title: "Two arcs to a radial",
    words: "the first left to the wind, the second as it should be",
  },
  {
    of: "Arcs and descents",
    name: "descent-begun-late",
    title: "Down to a fix",
    words: "begun late, begun in time, and held up by a level-off",
  },
  {
    of: "Holds",
    name: "hold-direct-well-flown",
    title: "A hold, well flown",
    words: "direct entry, the outbound leg planned for the wind",
  },
  {
    of: "Holds",
    name: "hold-outbound-flown-parallel",
    title: "A hold, outbound flown parallel",
    words: "parallel entry in 25 kt, every lap rolls out off the course",
  },
  {
    of: "Holds",
    name: "hold-teardrop-left-turns",
    title: "A hold with left turns",
    words: "teardrop entry, three times the inbound correction outbound",
  },
  {
    of: "Holds",
    name: "hold-by-distance",
    title: "A hold by distance",
    words: "the outbound leg ends 4 NM from the station",
  },
  {
    of: "Approaches",
    name: "approach-tidy-precision",
    title: "A tidy precision approach",
    words: "needle and glide path held to a landing",
  },
  {
    of: "Approaches",
    name: "approach-track-chased",
    title: "The final chased",
    words: "ten swings inside the final fix, then a missed approach",
  },
  {
    of: "Approaches",
    name: "approach-below-minimum",
    title: "Below the minimum",
    words: "level 130 ft under the minimum descent altitude",
  },
  {
    of: "Approaches",
    name: "approach-unstable-continued",
    title: "Unstable, and continued",
    words: "high and fast at 1,000 and 500 ft",
  },
  {
    of: "Approaches",
    name: "approach-step-downs",
    title: "Down by steps",
    words: "a step-down, level at the minimum, and a landing",
  },
  {
    of: "Approaches",
    name: "approach-from-arc",
    title: "From an arc",
    words: "twelve miles round a station onto the final",
  },
  {
    of: "Approaches",
    name: "approach-wind-let-go",
    title: "The wind let go",
    words: "the track turns off the final before the needle says so",
  },
];

async function fetched(address: string, name: string): Promise<File> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
  return new File([await answer.blob()], name);
}

/** The log and the brief, named for the sample. */
export function sampleFiles(sample: Sample): Promise<File[]> {
  const files = ["log.gpx", "brief.yaml"].map((file) => {
    const address = FOUND[`../samples/${sample.name}/${file}`];
    if (!address) throw new Error(`${sample.name} has no ${file}`);
    return fetched(address, `${sample.name}.${file.split(".")[1]}`);
  });
  return Promise.all(files);
}
