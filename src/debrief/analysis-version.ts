/** Which analysis makes the documents: one more whenever the same log and brief would give another document. */

/** Kept documents of another version are worked out anew. Notes of the instructor outlive it. */
export const ANALYSIS_VERSION = 13;
