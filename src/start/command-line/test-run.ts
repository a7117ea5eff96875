import type { Outlet } from './outlet.ts';
import { runCommand } from './run-command.ts';

/** A command as it ran in a test. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly notes: readonly string[];
}

/** Runs a command in this process, on a made-up day unless it says another. */
export async function run(args: readonly string[], input = ''): Promise<Ran> {
  const written: Uint8Array[] = [];
  const notes: string[] = [];
  const outlet = (today: string | undefined): Outlet => ({
    write: async (text) => {
      written.push(Buffer.from(text));
    },
    note: (line) => {
      notes.push(line);
    },
    progress: () => {},
    environment: {},
    input: (async function* () {
      yield new TextEncoder().encode(input);
    })(),
    isScreen: false,
    today: today ?? '2027-04-04',
  });
  const code = await runCommand(args, outlet);
  return { code, out: Buffer.concat(written).toString(), notes };
}
