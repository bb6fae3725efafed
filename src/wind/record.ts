/** A wind as it stands in the document. */
import { z } from "zod";

/** Wind *from*, true. `along` is tailwind positive, `across` pushes to the right positive, both on the mean track. `…95` are half-widths of 95 % intervals. */
export const windSchema = z.strictObject({
  knowledge: z.enum(["full", "along", "none"]),
  fromTrueDeg: z.number().nullable(),
  speedKt: z.number().nullable(),
  alongKt: z.number().nullable(),
  acrossKt: z.number().nullable(),
  along95Kt: z.number().nullable(),
  across95Kt: z.number().nullable(),
  ellipse95Kt: z
    .strictObject({ majorKt: z.number(), minorKt: z.number(), majorTrueDeg: z.number() })
    .nullable(),
  tasKt: z.number().nullable(),
  tas95Kt: z.number().nullable(),
  restsOn: z.enum(["measured", "turns", "courses", "prior", "nothing"]),
});

export type WindRecord = z.infer<typeof windSchema>;
