/** Files as the worker wants them and as the logbook keeps them. */
import type { OpenRequest } from "./messages.ts";
import type { Choices, KeptFile } from "./store/schema.ts";

export const keptFiles = (files: readonly File[]): KeptFile[] =>
  files.map((file) => ({ name: file.name, bytes: file }));

export const requestOf = (files: readonly KeptFile[], choices: Choices): OpenRequest => ({
  ...choices,
  files: files.map(({ name, bytes }) => new File([bytes], name)),
});

export const choicesOf = ({ files: _, ...choices }: OpenRequest): Choices => choices;
