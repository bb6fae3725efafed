/** Tendencies over many debriefs: the door. */
export {
  chooseFlights,
  type FlightChoice,
  type FlightLabels,
  flightsByPilot,
  type Observation,
  type ObservedFlight,
  observeFlight,
} from "./flight.ts";
export {
  type Habit,
  type HabitPoint,
  type HabitReport,
  type HabitStatus,
  habitsOf,
  LEAST_EXERCISES,
  SMALL,
  shownBest,
} from "./habits.ts";
export { type Practise, practiseNext } from "./practise.ts";
export { TENDENCIES } from "./tendencies.ts";
export type { Shown, TendencyUnit, WhyUntold } from "./tendency.ts";
