/** The exercises of all flights as one table, whatever their number: it is written as they come in. */
import { type FileHandle, open, rename } from "node:fs/promises";
import { join } from "node:path";
import { note, UnusableFile } from "./output.ts";
import { halfWritten } from "./write-whole.ts";

/** It is put in its place when it is whole. */
export class ExerciseTable {
  private file: FileHandle | null = null;
  private readonly path: string;
  constructor(folder: string) {
    this.path = join(folder, "exercises.csv");
  }
  async add(csv: string): Promise<void> {
    const body = csv.indexOf("\n") + 1;
    if (this.file === null) {
      this.file = await open(halfWritten(this.path, process.pid), "w").catch((error) => {
        throw new UnusableFile(this.path, "write", error);
      });
      await this.file.write(csv.slice(0, body));
    }
    await this.file.write(csv.slice(body));
  }
  async close(): Promise<void> {
    if (!this.file) return;
    await this.file.close();
    await rename(halfWritten(this.path, process.pid), this.path);
    note(`wrote ${this.path}`);
  }
}
