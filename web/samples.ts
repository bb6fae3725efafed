/** The made-up flights that come with the page: logs and briefs lie beside it and are fetched when asked for. */

const FOUND = import.meta.glob<string>("../samples/*/{log.gpx,brief.yaml}", {
  query: "?url",
  import: "default",
  eager: true,
});

/** On a sample in the logbook, so that it is told from what somebody flew. */
export const SAMPLE_TAG = "made up";

export interface Sample {
  /** The name of its folder. */
  readonly name: string;
  readonly title: string;
  readonly words: string;
}

export const SAMPLES: readonly Sample[] = [
  { name: "calm-and-tidy", title: "Calm and tidy", words: "light wind, four courses held" },
  {
    name: "strong-crosswind-badly-corrected",
    title: "A strong crosswind",
    words: "the track turns off long before the needle says so",
  },
  {
    name: "needle-chased",
    title: "The needle chased",
    words: "a turn after every swing of the needle",
  },
  {
    name: "hold-direct-well-flown",
    title: "A hold, well flown",
    words: "direct entry, the outbound leg planned for the wind",
  },
  {
    name: "hold-outbound-flown-parallel",
    title: "A hold, outbound flown parallel",
    words: "parallel entry in 25 kt, every lap rolls out off the course",
  },
  {
    name: "hold-teardrop-left-turns",
    title: "A hold with left turns",
    words: "teardrop entry, three times the inbound correction outbound",
  },
  {
    name: "hold-by-distance",
    title: "A hold by distance",
    words: "the outbound leg ends 4 NM from the station",
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
