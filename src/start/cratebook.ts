import { startQuickly } from './quick-start.ts';

/** The command line: `./cratebook COMMAND …`. The clock comes in here and nowhere else. */

startQuickly();
const { endQuietlyWithReader, machineOutlet } = await import('./command-line/machine-outlet.ts');
const { runCommand } = await import('./command-line/run-command.ts');

endQuietlyWithReader();
// When nothing is left to do: the system takes memory back sooner than it can be put in order.
process.once('beforeExit', () => process.exit());
process.exitCode = await runCommand(process.argv.slice(2), machineOutlet);
