/** The content policy forbids code made from text; told so before its first schema, the worker's checker does not try. */
import { config } from "zod";

config({ jitless: true });
