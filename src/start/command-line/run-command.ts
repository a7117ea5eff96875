import { nearest } from '../../base/nearest.ts';
import type { Command } from './command.ts';
import { commands } from './commands.ts';
import type { Outlet } from './outlet.ts';
import { readArguments } from './read-arguments.ts';
import { Stop } from './stop.ts';

/**
 * Runs one command line.
 * @param outletFor makes the outlet once `--today` is known
 * @returns the exit code: 0 fine, 1 findings, 2 unusable input (one line on standard error)
 */
export async function runCommand(
  args: readonly string[],
  outletFor: (today: string | undefined) => Outlet,
): Promise<number> {
  const [name, ...rest] = args;
  try {
    if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
      await outletFor(undefined).write(overview());
      return name === undefined ? 2 : 0;
    }
    const command = await commandOf(name);
    const given = readArguments(rest, command.options, command.takes);
    const outlet = outletFor(given.day('today'));
    if (given.has('help')) {
      await outlet.write(helpText(name, command));
      return 0;
    }
    return await command.run(given, outlet);
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    const where = name === undefined ? 'cratebook' : `cratebook ${name}`;
    outletFor(undefined).note(`${where}: ${oneLine(error.message)}`);
    return error.code;
  }
}

async function commandOf(name: string): Promise<Command> {
  const entry = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (entry !== undefined) return entry.load();
  const near = nearest(name, Object.keys(commands));
  const mean = near === undefined ? 'see cratebook --help' : `did you mean ${near}?`;
  throw new Stop(`there is no such command; ${mean}`);
}

function overview(): string {
  const lines = Object.entries(commands).map(
    ([name, { summary }]) => `  ${name.padEnd(12)}${summary}\n`,
  );
  return `cratebook COMMAND …: keeps the book of a youth group's product sale

${lines.join('')}
Each says more: cratebook COMMAND --help. With --json the answer is for programs.
Exit code: 0 fine, 1 findings, 2 the input cannot be used.

Example
  cratebook demo --out demo.jsonl && cratebook closing demo.jsonl
`;
}

function helpText(name: string, command: Command): string {
  const takes = command.takes.map((each) => ` ${each}`).join('');
  return `cratebook ${name}${takes} [options]\n\n${command.help}\n`;
}

function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').trim();
}
