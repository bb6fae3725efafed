/** What every report of ours says: it can hurt someone who trusts it blindly. */
export const CAUTION =
  "Training aid, after the flight only. Not for navigation, not an official grade, no substitute for the instructor, the published procedure, the aircraft’s instruments or local rules. GPS height is not an altimeter.";
