/** The door of the brief: text or a route in, what the flight was meant to do out. */
export { DIRECTION_PATTERN, readDirection, type WrittenDirection } from "./direction.ts";
export type {
  BriefDraft,
  DraftApproach,
  DraftCourse,
  DraftExercise,
  DraftLeg,
} from "./draft.ts";
export { HOLD_LEG_PATTERN, readHoldLeg } from "./hold-leg.ts";
export { briefJsonSchema } from "./json-schema.ts";
export { readBrief } from "./read.ts";
export { resolveBrief } from "./resolve.ts";
export { briefFromRoute } from "./route.ts";
export { readStandard } from "./standard-file.ts";
export { briefValues } from "./text.ts";
export { briefText, briefToYaml, type WrittenValues, writtenBrief } from "./write.ts";
