import type { Outlet } from './outlet.ts';
import type { Arguments, OptionTable } from './read-arguments.ts';

/** One command of the command line: what it takes, and what it does. */
export interface Command {
  readonly options: OptionTable;
  /** Names of what stands without an option, in order, as the help calls them. */
  readonly takes: readonly string[];
  /** What `--help` prints below the usage line: what the options mean, and examples. */
  readonly help: string;
  /** @returns the exit code: 0 fine, 1 findings, 2 unusable input */
  run(given: Arguments, outlet: Outlet): Promise<number>;
}
