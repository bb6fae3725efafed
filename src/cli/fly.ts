/** `hindtrack fly SCENARIO`: an invented flight with known truth, for demonstrations and for measuring accuracy. */
import { Command, InvalidArgumentError } from "commander";
import { flyScenario, SCENARIOS } from "../index.ts";
import { writeInto } from "./output.ts";

function wholeNumber(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError("a seed is a whole number, 0 to 999999999.");
  return Number(text);
}

export function flyCommand(): Command {
  const names = Object.keys(SCENARIOS);
  const command = new Command("fly")
    .summary("fly an invented flight with known truth")
    .description(
      `Writes log.gpx, brief.yaml where there is one, and truth.json.\nScenarios: ${names.join(", ")}.`,
    )
    .argument("<scenario>", "one of the scenarios above")
    .requiredOption("--out <folder>", "where to write")
    .option("--seed <number>", "the same seed gives the same flight", wholeNumber, 1);
  command.action(async (name: string, options: { out: string; seed: number }) => {
    if (!names.includes(name))
      command.error(`no scenario ${name}; there are ${names.join(", ")}`, { exitCode: 2 });
    const { gpx, brief, truth } = flyScenario(name, options.seed);
    await writeInto(options.out, [
      { name: "log.gpx", text: gpx },
      ...(brief === null ? [] : [{ name: "brief.yaml", text: brief }]),
      { name: "truth.json", text: `${JSON.stringify(truth, null, 1)}\n` },
    ]);
  });
  return command;
}
