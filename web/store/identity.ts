/** Names for flights, and how the same files are known again. */
import type { KeptFile } from "./schema.ts";

const hex = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");

/** Eight random bytes: among a million flights two share a name once in 10^7 logbooks. */
export const newId = (): string => hex(crypto.getRandomValues(new Uint8Array(8)));

/** SHA-256 over names and bytes, whatever the order; null where the page may not compute it (not a secure context). */
export async function fingerprintOf(files: readonly KeptFile[]): Promise<string | null> {
  if (!globalThis.crypto?.subtle) return null;
  const digest = async (bytes: ArrayBuffer) =>
    hex(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)));
  const each = await Promise.all(
    files.map(async ({ name, bytes }) => `${name} ${await digest(await bytes.arrayBuffer())}`),
  );
  return digest(new TextEncoder().encode(each.sort().join("\n")).buffer as ArrayBuffer);
}
