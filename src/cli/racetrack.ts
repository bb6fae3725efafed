/** `hindtrack racetrack`: the hold of the next flight, solved for a wind. */
import { Command } from "commander";
import { CAUTION, issueSentence, racetrackFor, racetrackText, readHold, type TypedHold } from "../index.ts";

/** The option of a field, as it is called: `windDoubt` is `--wind-doubt`. */
const optionOf = (field = ""): string =>
  `--${field.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

export function racetrackCommand(): Command {
  const command = new Command("racetrack")
    .summary("solve the hold of the next flight for a wind")
    .description(
      [
        "The outbound heading and time that bring a hold back onto its inbound course, in a steady wind.",
        "Directions are magnetic unless written with a T, as in 247T; the wind is in the reference of the inbound course",
        "unless it is written with its own letter.",
      ].join("\n"),
    )
    .requiredOption("--inbound <course>", "inbound course, as in 247 or 247T")
    .requiredOption("--tas <kt>", "true airspeed")
    .requiredOption("--wind <from/kt>", "where the wind comes from and its speed, as in 192/20 or 192T/20")
    .option("--turns <side>", "right or left", "right")
    .option("--leg <length>", '"1 min", "90 s" or "4 NM"; else what the standard has for the altitude')
    .option("--altitude <ft>", "for the standard’s leg time and speed limit")
    .option("--timing <whose>", "us times the inbound leg, icao the outbound leg", "us")
    .option("--bank <degrees>", "most bank in the turns; else the standard’s: 30 us, 25 icao")
    .option("--rate <deg/s>", "turn rate where the bank allows it; else 3")
    .option("--wind-doubt <kt>", "how far the wind may be off (95 %), to see the doubt of the answer")
    .option("--variation <degrees>", "as in 3E; where course and wind are in different references")
    .option(
      "--declination <degrees>",
      "of the station, as in 3E, where it is not the variation; headings are by the variation",
    )
    .option("--json", "the answer as a record");
  command.action((options: TypedHold & { readonly json?: boolean }) => {
    const { asked, issues } = readHold(options);
    if (!asked) {
      const lines = issues.map(
        (issue) => `${optionOf(issue.where.path)}: ${issueSentence({ ...issue, where: {} })}`,
      );
      command.error(lines.join("\n"), { exitCode: 2 });
      return;
    }
    const answer = racetrackFor(asked);
    process.stdout.write(
      options.json ? `${JSON.stringify({ caution: CAUTION, ...answer }, null, 2)}\n` : racetrackText(answer),
    );
  });
  return command;
}
