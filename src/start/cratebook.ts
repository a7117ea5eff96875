import { endQuietlyWithReader, machineOutlet } from './command-line/machine-outlet.ts';
import { runCommand } from './command-line/run-command.ts';

/** The command line: `./cratebook COMMAND …`. The clock comes in here and nowhere else. */
endQuietlyWithReader();
process.exitCode = await runCommand(process.argv.slice(2), machineOutlet);
