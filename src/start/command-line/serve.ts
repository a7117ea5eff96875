import type { Command } from './command.ts';
import { Stop } from './stop.ts';

const PORT_MAX = 65_535;

export const serve: Command = {
  options: { data: { type: 'string' }, port: { type: 'string' } },
  takes: [],
  help: `Serves the app on this machine and prints its address, until Ctrl+C.

  --data DIR   the folder that keeps the books; without it, CRATEBOOK_DATA or the user's own
  --port N     the port; without it, the first free one

Examples
  cratebook serve
  cratebook serve --data ~/books --port 4870`,
  run: async (given) => {
    const { runServe } = await import('../run-serve.ts');
    const data = given.get('data');
    const port = portOf(given.get('port'));
    return runServe({
      ...(data === undefined ? {} : { data }),
      ...(port === undefined ? {} : { port }),
    });
  },
};

function portOf(said: string | undefined): number | undefined {
  if (said === undefined) return undefined;
  const port = Number(said);
  if (/^\d+$/.test(said) && port > 0 && port <= PORT_MAX) return port;
  throw new Stop(`--port: said "${said}", wanted a whole number from 1 to ${PORT_MAX}`);
}
