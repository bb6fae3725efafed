/** Two fixes that are one place: no course leads from one to the other. */
import { inverse, type Position } from "../geodesy/index.ts";

/** Fixes nearer than this are one, metres: the rounding of coordinates to five decimals. */
const APART_M = 1;

export const samePlace = (a: Position, b: Position): boolean => inverse(a, b).distance < APART_M;
