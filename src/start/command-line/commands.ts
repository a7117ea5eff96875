import type { Command } from './command.ts';

/** Every command, loaded only when it is asked for: an answer does not wait for the typesetter. */
export interface CommandEntry {
  readonly summary: string;
  readonly load: () => Promise<Command>;
}

export const commands: Readonly<Record<string, CommandEntry>> = {
  balances: {
    summary: 'what every account holds',
    load: async () => (await import('./balances.ts')).balances,
  },
  check: {
    summary: 'what is not right about a book',
    load: async () => (await import('./check.ts')).check,
  },
  closing: {
    summary: 'what is left before the season closes',
    load: async () => (await import('./closing.ts')).closing,
  },
  statement: {
    summary: "one family's statement, on the screen or as a PDF",
    load: async () => (await import('./statement.ts')).statement,
  },
  statements: {
    summary: "every family's statement as a PDF",
    load: async () => (await import('./statements.ts')).statements,
  },
  prizes: {
    summary: 'prize steps earned, choices missing, what to order',
    load: async () => (await import('./prizes.ts')).prizes,
  },
  host: {
    summary: "a host shop's stalls over the season, on the screen or as a PDF",
    load: async () => (await import('./host.ts')).host,
  },
  shareout: {
    summary: "a pool's credit shared fairly among sellers, in whole units",
    load: async () => (await import('./shareout.ts')).shareout,
  },
  lift: {
    summary: 'a pool given where it reaches most goals and prize steps',
    load: async () => (await import('./lift.ts')).lift,
  },
  explain: {
    summary: 'what most likely went wrong where something does not agree',
    load: async () => (await import('./explain.ts')).explain,
  },
  match: {
    summary: "the bank's or the supplier's statement against the book",
    load: async () => (await import('./match.ts')).match,
  },
  'read-line': {
    summary: 'how a line of text is read as a record',
    load: async () => (await import('./read-line.ts')).readLine,
  },
  export: {
    summary: 'a book for other programs: accounts, csv, xlsx',
    load: async () => (await import('./export.ts')).exportBook,
  },
  serve: {
    summary: 'the app on this machine',
    load: async () => (await import('./serve.ts')).serve,
  },
  demo: {
    summary: 'the made-up demo season as a book file',
    load: async () => (await import('./demo.ts')).demo,
  },
  import: {
    summary: 'adds a book file to the store',
    load: async () => (await import('./import.ts')).importBook,
  },
  backup: {
    summary: 'a compared copy of the store',
    load: async () => (await import('./backup.ts')).backup,
  },
  restore: {
    summary: 'a new store from a backup',
    load: async () => (await import('./backup.ts')).restore,
  },
};
