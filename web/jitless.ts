/** The content policy forbids code made from text; told so before its first schema, the checker of page and worker does not try. */
import { config } from "zod";

config({ jitless: true });
