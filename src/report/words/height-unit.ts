/** What is said of heights that seem to be in the other unit, wherever a height cannot be told by them. */
export const HEIGHT_UNIT = "the heights of the log seem to be in another unit than they are given for";
