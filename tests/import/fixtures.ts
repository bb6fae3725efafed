/** The fixture files: their names, bytes and text. */
import { readdirSync, readFileSync } from "node:fs";
import { encodingOf } from "../../src/import/decode.ts";

const folder = new URL("./fixtures/", import.meta.url);

export const fixtureNames = (): string[] => readdirSync(folder).sort();
export const fixtureBytes = (name: string): Uint8Array => readFileSync(new URL(name, folder));
export const fixtureText = (name: string): string => {
  const bytes = fixtureBytes(name);
  try {
    return new TextDecoder(encodingOf(bytes)).decode(bytes);
  } catch {
    return new TextDecoder().decode(bytes); // an encoding that nobody knows
  }
};
