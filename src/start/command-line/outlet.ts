/** Where a command's answer, its progress and its day come from; tests hand in their own. */
export interface Outlet {
  /** Standard output; resolves when more may be written. */
  write(text: string | Uint8Array): Promise<void>;
  /** Standard error: one line that stays. */
  note(line: string): void;
  /** How far long work is, in a line that is written over; nothing where nobody watches. */
  progress(line: string): void;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly input: AsyncIterable<Uint8Array>;
  /** True where the answer goes to a screen, which bytes of a file would upset. */
  readonly isScreen: boolean;
  /** The calendar day on this machine (`YYYY-MM-DD`), unless `--today` fixes it. */
  readonly today: string;
}

export async function writeJson(outlet: Outlet, answer: unknown): Promise<void> {
  await outlet.write(`${JSON.stringify(answer)}\n`);
}

export async function writeAll(outlet: Outlet, pieces: Iterable<string>): Promise<void> {
  for (const piece of pieces) await outlet.write(piece);
}
