/** The head of a logbook saved as a file: what is in it, and where. */
import { z } from "zod";

const text = z.string();
const note = z.looseObject({ exercise: z.number().nullable(), title: text.optional(), text });
const overrule = z.looseObject({
  exercise: z.number().nullable(),
  title: text,
  criterion: text,
  verdict: z.enum(["met", "not met", "cannot tell", "not flown"]),
  by: text,
  why: text,
});

/** A file as it was given, with its place in the archive. */
const fileSchema = z.object({ name: text, path: text, bytes: z.number() });

/** Only what people gave and what tells the list; all else is worked out again where it is missing. */
const flightSchema = z.object({
  id: z.string().regex(/^[\w-]{1,64}$/),
  added: z.number(),
  opened: z.number(),
  changed: z.number(),
  deleted: z.number().nullable(),
  fingerprint: text.nullable(),
  pilot: text,
  aircraft: text,
  tags: z.array(text),
  notes: z.object({ remarks: z.array(note), overrules: z.array(overrule) }),
  choices: z.looseObject({
    route: z.number().nullable(),
    flight: z.number().nullable(),
    columns: z.record(text, text).nullable(),
    standard: text.nullable(),
  }),
  files: z.array(fileSchema).min(1),
  /** Place of the debrief document, and which analysis made it. */
  document: z.object({ path: text, analysis: z.number() }).nullable(),
});

export const manifestSchema = z.object({
  format: z.literal("hindtrack-logbook"),
  version: z.literal(1),
  /** When it was saved, UTC. */
  saved: text,
  flights: z.array(flightSchema),
  /** Briefs by name, and schools' standards, of which one may be the usual one. */
  templates: z.array(z.object({ name: text, saved: z.number(), path: text, usual: z.boolean().optional() })),
  places: z.array(z.object({ name: text, saved: z.number(), path: text })),
});

export type Manifest = z.infer<typeof manifestSchema>;
export type ManifestFlight = Manifest["flights"][number];

/** A name that every system takes as a file's. */
export const safeName = (name: string): string =>
  Array.from(name, (c) => (c < " " || '\\/:*?"<>|'.includes(c) ? "_" : c))
    .join("")
    .slice(-80);
