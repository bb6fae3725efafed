/** The command line: `hindtrack debrief`, `hindtrack habits`, `hindtrack racetrack` and `hindtrack fly`. Exit codes: 0 done, 1 unusable input, 2 wrong call; Ctrl-C ends it as shells expect, with 130. */
import { Command, CommanderError } from "commander";
import { UnusableInput } from "../index.ts";
import { debriefCommand } from "./debrief.ts";
import { flyCommand } from "./fly.ts";
import { habitsCommand } from "./habits.ts";
import { complain, UnusableFile } from "./output.ts";
import { racetrackCommand } from "./racetrack.ts";

const program = new Command("hindtrack")
  .description(
    "Post-flight debriefs for instrument training, from a GPS track log.\nTraining aid, after the flight only; not for navigation.",
  )
  .version(__HINDTRACK_VERSION__)
  .showHelpAfterError("(hindtrack --help shows how to call it)")
  .exitOverride();
program.addCommand(debriefCommand());
program.addCommand(habitsCommand());
program.addCommand(racetrackCommand());
program.addCommand(flyCommand());
for (const command of program.commands) command.exitOverride();

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) {
    process.exitCode = error.exitCode === 0 ? 0 : 2;
  } else if (error instanceof UnusableInput || error instanceof UnusableFile) {
    complain(error);
    process.exitCode = 1;
  } else {
    throw error;
  }
}
