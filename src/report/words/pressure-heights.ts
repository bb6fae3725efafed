/** What is said of heights on 1013.25 hPa wherever a height cannot be told by them. */
export const PRESSURE_HEIGHTS =
  "the log has no GPS height but pressure on 1013.25 hPa, which may lie some 600 ft off the altimeter’s setting";
