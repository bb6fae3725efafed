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
  type HabitReport,
  type HabitStatus,
  habitsOf,
  SMALL,
  shownBest,
} from "./habits.ts";
export { type Practise, practiseNext } from "./practise.ts";
export { TENDENCIES } from "./tendencies.ts";
export type { Shown, TendencyUnit, WhyUntold } from "./tendency.ts";
export { type HabitPoint, LEAST_EXERCISES } from "./tried.ts";
