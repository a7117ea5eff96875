import { enableCompileCache } from 'node:module';
import { fileURLToPath } from 'node:url';
import { useBundledLibraries } from './bundled-libraries.ts';

/** The command line: `./cratebook COMMAND …`. The clock comes in here and nowhere else. */

// Halves the start: what Node makes of the sources is kept, in a folder that is only ours.
enableCompileCache(fileURLToPath(new URL('../../node_modules/.cache/cratebook', import.meta.url)));
useBundledLibraries();
const { endQuietlyWithReader, machineOutlet } = await import('./command-line/machine-outlet.ts');
const { runCommand } = await import('./command-line/run-command.ts');

endQuietlyWithReader();
process.exitCode = await runCommand(process.argv.slice(2), machineOutlet);
