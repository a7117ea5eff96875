import { findingLine } from '../../intake/finding.ts';
import { readShareProblem } from '../../intake/problems/share-problem.ts';
import { poolShare } from '../../questions/share/pool-share.ts';
import { type SharedOut, type ShareInput, shareOut } from '../../questions/share/share-out.ts';
import { poolRefusalWords } from '../../statements/pool-refusal-words.ts';
import { BOOK_HELP, bookOptions } from './book-options.ts';
import type { Command } from './command.ts';
import { openBook } from './open-book.ts';
import { type Outlet, writeJson } from './outlet.ts';
import type { Arguments } from './read-arguments.ts';
import { standardInput } from './standard-input.ts';
import { Stop } from './stop.ts';
import { textTable } from './text-table.ts';

export const shareout: Command = {
  options: {
    ...bookOptions,
    pool: { type: 'string' },
    by: { type: 'string' },
    method: { type: 'string' },
  },
  takes: ['[BOOK]'],
  help: `Whole units of a pool shared among sellers by weight: every product is given out whole,
every seller's total is the nearest to what is due (largest remainder, what earlier share-outs owed
carried on), every cell is the exact share rounded down or up, and of all such tables the one with
the least squares is given. Equal claims: the seller listed first.

  --pool POOL      post, gift or stall:<stall> of BOOK
  --by WEIGHTS     minutes (worked at the stall; the default) or even
  --method RULE    remainder (the default), divisor (Webster) or rota (one by one in turn)
  --json           {"lines":{seller:{product:units}},"totals":{…},"due":{…},"left":{…},"worst":n}

Without BOOK a problem is read from standard input:
  {"products":{"honey":10},"sellers":[{"seller":"ada","weight":90,"carried":-0.4,
   "locked":{"honey":2}},{"seller":"ben","weight":60}]}
carried: units credited so far less units due so far. locked: cells that are fixed by hand.

Exit code: 0 all shared, 1 something could not be (its reason is told), 2 unusable input.

${BOOK_HELP}

Examples
  cratebook shareout spring.jsonl --pool stall:quay-2
  cratebook shareout --json < problem.json`,
  run: async (given, outlet) => {
    const input = await inputOf(given, outlet);
    const shared = shareOut(input);
    for (const line of reasonsOf(shared)) outlet.note(`cratebook shareout: ${line}`);
    if (given.has('json')) await writeJson(outlet, shared);
    else await outlet.write(tableOf(input, shared));
    return Object.values(shared.left).some((units) => units > 0) ? 1 : 0;
  },
};

async function inputOf(given: Arguments, outlet: Outlet): Promise<ShareInput> {
  const method = given.oneOf('method', ['', 'remainder', 'divisor', 'rota'], '');
  const by = given.oneOf('by', ['', 'minutes', 'even'], '');
  if (given.positionals.length === 0) {
    if (given.get('pool') !== undefined) throw new Stop('BOOK is missing: --pool is one of a book');
    if (by !== '') throw new Stop('BOOK is missing: --by needs the shifts of a book');
    const read = readShareProblem(await standardInput(outlet));
    if (!read.ok) throw new Stop(findingLine(read.refusal, 'standard input'));
    return method === '' ? read.value : { ...read.value, method };
  }
  const pool = given.need('pool', 'post, gift or stall:<stall>');
  const { ledger } = await openBook(given, outlet);
  const share = poolShare(ledger, pool, {
    by: by === '' ? undefined : by,
    method: method === '' ? undefined : method,
  });
  if (!share.ok) throw new Stop(`--pool: ${poolRefusalWords(share.refusal)}`);
  return share.value;
}

/** What the locked cells did to the rest, one line each. */
function reasonsOf({ left, forced, beyond }: SharedOut): string[] {
  const lines = Object.entries(left)
    .filter(([, units]) => units > 0)
    .map(([product, units]) => `${units} ${product} left: every seller's ${product} is locked`);
  for (const { sellers, products } of forced) {
    const who = sellers.join(', ');
    lines.push(`only ${who} can take the rest of ${products.join(', ')}: totals move from due`);
  }
  if (beyond > 0)
    lines.push(`cells go up to ${beyond} beyond their exact share rounded down or up`);
  return lines;
}

function tableOf({ products, sellers }: ShareInput, shared: SharedOut): string {
  const names = Object.keys(products);
  const rows = sellers.map(({ seller }) => [
    seller,
    ...names.map((product) => String(shared.lines[seller]?.[product] ?? 0)),
    String(shared.totals[seller] ?? 0),
    (shared.due[seller] ?? 0).toFixed(2),
  ]);
  const numbers = new Set([...names.keys(), names.length, names.length + 1].map((at) => at + 1));
  const tied =
    shared.tied.length === 0 ? '' : `Equal claims, by order: ${shared.tied.join(', ')}\n`;
  return `${textTable(['seller', ...names, 'in all', 'due'], rows, numbers)}${tied}`;
}
