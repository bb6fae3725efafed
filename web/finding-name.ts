/** A finding in two or three words, for the list of moments: the sentence stands above it. */
import { plain } from "../src/index.ts";

/** Only those whose code does not read as words of the trade. */
const NAMES: Readonly<Record<string, string>> = {
  "drifted-before-needle": "off before the needle told",
  "tracked-within": "all that is judged",
  "wind-uncorrected": "wind left uncorrected",
  "under-corrected": "too little wind correction",
  "over-corrected": "too much wind correction",
  "corrected-wrong-way": "heading turned downwind",
  "heading-off": "heading off, not by the wind",
  "rolled-out-off": "rolled out on a wrong track",
  "cannot-tell": "cause not known",
  "turned-late": "turned on late",
  "turned-early": "turned on early",
  chased: "needle chased",
  "outbound-parallel": "outbound flown parallel",
  "outbound-undercorrected": "outbound corrected too little",
  "outbound-overcorrected": "outbound corrected too much",
  "arc-within": "all that is judged",
  "arc-wind-uncorrected": "wind left uncorrected",
  "arc-under-corrected": "too little wind correction",
  "arc-over-corrected": "too much wind correction",
  "arc-corrected-wrong-way": "heading turned downwind",
  "final-within": "final held",
  "glide-path-within": "glide path held",
};

export const findingName = (code: string): string => NAMES[code] ?? plain(code);
