import { parseArgs } from 'node:util';
import { isDay } from '../../base/day.ts';
import { nearest } from '../../base/nearest.ts';
import { Stop } from './stop.ts';

export type OptionTable = Readonly<Record<string, { readonly type: 'string' | 'boolean' }>>;

/** Options that every command takes. */
const EVERYWHERE: OptionTable = {
  json: { type: 'boolean' },
  help: { type: 'boolean' },
  today: { type: 'string' },
};

/** What stood on the command line after the command's name. */
export class Arguments {
  readonly #texts: ReadonlyMap<string, string>;
  readonly #flags: ReadonlySet<string>;
  readonly positionals: readonly string[];

  constructor(
    texts: ReadonlyMap<string, string>,
    flags: ReadonlySet<string>,
    positionals: readonly string[],
  ) {
    this.#texts = texts;
    this.#flags = flags;
    this.positionals = positionals;
  }

  has(flag: string): boolean {
    return this.#flags.has(flag);
  }

  get(option: string): string | undefined {
    return this.#texts.get(option);
  }

  /** @param wanted what to say it is for */
  need(option: string, wanted: string): string {
    const text = this.get(option);
    if (text === undefined) throw new Stop(`--${option} is missing: ${wanted}`);
    return text;
  }

  oneOf<T extends string>(option: string, words: readonly T[], usual: T): T {
    const said = this.get(option);
    if (said === undefined) return usual;
    const found = words.find((word) => word === said);
    if (found !== undefined) return found;
    throw new Stop(`--${option}: said "${said}", wanted ${words.join(', ')}`);
  }

  day(option: string): string | undefined {
    const said = this.get(option);
    if (said === undefined || isDay(said)) return said;
    throw new Stop(`--${option}: said "${said}", wanted a day that exists, as YYYY-MM-DD`);
  }
}

/**
 * @param takes names of what stands without an option; those in brackets may be missing
 * @throws Stop with one line that names the nearest known option
 */
export function readArguments(
  args: readonly string[],
  options: OptionTable,
  takes: readonly string[],
): Arguments {
  const known = { ...options, ...EVERYWHERE };
  const { tokens } = parseArgs({
    args: args.map((arg) => (arg === '-h' ? '--help' : arg)),
    options: known,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const texts = new Map<string, string>();
  const flags = new Set<string>();
  const positionals: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') positionals.push(token.value);
    if (token.kind !== 'option') continue;
    const text = textOf(token, known);
    if (text === undefined) flags.add(token.name);
    else texts.set(token.name, text);
  }
  if (!flags.has('help')) expectTaken(positionals, takes);
  return new Arguments(texts, flags, positionals);
}

interface OptionToken {
  readonly name: string;
  readonly rawName: string;
  readonly value?: string | undefined;
  readonly inlineValue?: boolean | undefined;
}

/** The text of an option that takes one; undefined for a flag. */
function textOf(token: OptionToken, known: OptionTable): string | undefined {
  const option = Object.hasOwn(known, token.name) ? known[token.name] : undefined;
  if (option === undefined) {
    const near = nearest(token.name, Object.keys(known));
    const mean = near === undefined ? 'see --help' : `did you mean --${near}?`;
    throw new Stop(`there is no option ${token.rawName}; ${mean}`);
  }
  if (option.type === 'boolean') {
    if (token.value !== undefined) throw new Stop(`${token.rawName} takes no value`);
    return undefined;
  }
  const isNext = token.value?.startsWith('--') === true && token.inlineValue !== true;
  if (token.value === undefined || token.value === '' || isNext) {
    throw new Stop(`${token.rawName} needs a value after it`);
  }
  return token.value;
}

function expectTaken(positionals: readonly string[], takes: readonly string[]): void {
  const missing = takes[positionals.length];
  if (missing?.startsWith('[') === false) throw new Stop(`${missing} is missing; see --help`);
  const extra = positionals[takes.length];
  if (extra !== undefined) throw new Stop(`said "${extra}", wanted nothing more; see --help`);
}
