import { once } from 'node:events';
import type { Outlet } from './outlet.ts';

/** The real standard input and output, and the day on this machine's clock. */
export function machineOutlet(today: string | undefined): Outlet {
  const isWatched = process.stderr.isTTY === true;
  let shown = 0;
  const clear = () => {
    if (shown > 0) process.stderr.write(`\r${' '.repeat(shown)}\r`);
    shown = 0;
  };
  return {
    write: async (text) => {
      clear();
      if (!process.stdout.write(text)) await once(process.stdout, 'drain');
    },
    note: (line) => {
      clear();
      process.stderr.write(`${line}\n`);
    },
    progress: (line) => {
      if (!isWatched) return;
      clear();
      process.stderr.write(line);
      shown = line.length;
    },
    environment: process.env,
    input: process.stdin,
    isScreen: process.stdout.isTTY === true,
    today: today ?? localDay(new Date()),
  };
}

/** A reader that stops early (`| head`) is no fault: the rest is not wanted. */
export function endQuietlyWithReader(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    process.stderr.write(`cratebook: cannot write the answer: ${error.message}\n`);
    process.exit(2);
  });
}

function localDay(now: Date): string {
  const two = (part: number) => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
