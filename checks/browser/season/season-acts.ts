import { assert } from '../../../src/base/assert.ts';
import { Ledger } from '../../../src/ledger/ledger.ts';
import { denominations } from '../../../src/questions/denominations.ts';
import { shelfOrder } from '../../../src/questions/shelf-order.ts';
import type { BookRecord, Kind, RecordOf } from '../../../src/records/record.ts';
import { poolName } from '../../../src/statements/pool-name.ts';
import { moneyToType } from '../../../src/web/parts/typed.ts';
import { say } from '../../../src/web/say.ts';
import {
  type Act,
  button,
  date,
  field,
  group,
  link,
  open,
  page,
  save,
  titled,
  write,
} from './act.ts';
import { editActs, formActs, goodsActs, removeActs } from './form-acts.ts';
import { type Names, namesOf } from './names.ts';
import { seasonActs, setUpActs, toStall } from './set-up-acts.ts';

/**
 * A whole season as steps, made from the records of a book: each record by the page on which a
 * person would write it. `at` is what the device's clock says meanwhile.
 */
export interface Step {
  readonly at: string;
  /** What is written, for a message that says where it went wrong. */
  readonly about: string;
  readonly acts: readonly Act[];
}

/** @param afresh the step before which the app is opened anew, so that no form is open */
export function seasonSteps(records: readonly BookRecord[], afresh: number): Step[] {
  const book = new WholeBook(records);
  const inTurn = inTurnOf(records);
  const steps = inTurn.map((record, place): Step => {
    const acts = book.actsFor(record, place === afresh ? undefined : inTurn[place - 1]);
    return { at: record.at, about: aboutOf(record), acts };
  });
  const at = records.at(-1)?.at ?? '';
  return [...steps, { at, about: 'close', acts: closingActs() }];
}

/** Choices last: a page offers them only for steps that the shared-out credit has reached. */
function inTurnOf(records: readonly BookRecord[]): BookRecord[] {
  const last = records.at(-1)?.at ?? '';
  const choices = records.filter((record) => record.kind === 'choice');
  return [
    ...records.filter((record) => record.kind !== 'choice'),
    ...choices.map((record) => ({ ...record, at: last })),
  ];
}

function aboutOf(record: BookRecord): string {
  const { note: _note, ...says } = record;
  return JSON.stringify(says).slice(0, 300);
}

class WholeBook {
  readonly #ledger: Ledger;
  readonly #names: Names;
  readonly #products = new Set<string>();

  constructor(records: readonly BookRecord[]) {
    this.#ledger = Ledger.of(records);
    this.#names = namesOf(this.#ledger);
  }

  actsFor(record: BookRecord, before: BookRecord | undefined): Act[] {
    const known = new Set(this.#products);
    if (record.kind === 'product') this.#products.add(record.product);
    if (record.kind === 'void') return removeActs(record, this.#movement(record.voids));
    if (record.replaces !== undefined) {
      return editActs(record, this.#movement(record.replaces), this.#names);
    }
    switch (record.kind) {
      case 'season':
        return seasonActs(record, this.#names);
      case 'product':
      case 'family':
      case 'seller':
      case 'host':
      case 'neighbour':
      case 'level':
      case 'proceeds':
      case 'stall':
      case 'hold':
      case 'choice':
        return setUpActs(record, staysAt(before), this.#names, known);
      case 'count':
        return countActs(record, this.#ledger);
      case 'stall-close':
        return [
          ...toStall(this.#stall(record.stall), this.#names),
          ...settleActs(record, this.#names),
        ];
      case 'shareout':
        return this.#shareActs(record);
      default:
        return formActs(record, before, this.#names);
    }
  }

  #movement(id: string): Exclude<BookRecord, { readonly kind: 'void' }> {
    const record = this.#ledger.standing.get(id);
    assert(record !== undefined && record.kind !== 'void', 'edits and removals are of movements');
    return record;
  }

  #stall(id: string): RecordOf<'stall'> {
    const stall = this.#ledger.setup.stalls.get(id);
    assert(stall !== undefined, `${id} is a stall of the season`);
    return stall;
  }

  #shareActs({ pool, lines }: RecordOf<'shareout'>): Act[] {
    const stall = pool.startsWith('stall:') ? this.#stall(pool.slice('stall:'.length)) : undefined;
    const name = poolName(this.#ledger.setup, pool, say);
    const title = closingTitle(pool);
    const row = { css: `main li:has(.closing-title:text-is("${title}"))` };
    const there =
      stall === undefined
        ? [page(say`Closing list`), open(link(say`Share out`, row)), titled(name)]
        : toStall(stall, this.#names);
    const products = new Set(Object.values(lines).flatMap((units) => Object.keys(units)));
    const cells = Object.entries(lines).flatMap(([seller, units]) =>
      [...products].map((product) => ({
        at: {
          role: 'textbox' as const,
          name: `${this.#names.of(seller)}, ${this.#names.of(product)}`,
        },
        text: String(units[product] ?? 0),
      })),
    );
    return [...there, { does: 'agree', cells }, save(say`Save the share-out`)];
  }
}

function closingTitle(pool: string): string {
  return pool === 'post' ? say`Posted orders shared out` : say`Gift units shared out`;
}

/** A stall's shifts end on another page than its list. */
function staysAt(before: BookRecord | undefined): Kind | undefined {
  return before?.kind === 'stall' ? undefined : before?.kind;
}

function countActs(record: RecordOf<'count'>, ledger: Ledger): Act[] {
  const products = Object.entries(record.lines).length;
  const size = (product: string) => ledger.setup.products.get(product)?.case ?? 1;
  const order = shelf(ledger, record);
  const each = order.flatMap((product, place): Act[] => {
    const units = record.lines[product] ?? 0;
    const cases = size(product) > 1 ? Math.floor(units / size(product)) : 0;
    const singles = units - cases * size(product);
    return [
      { does: 'see', at: { css: `.count-place:text("${say`${place + 1} of ${products}`}")` } },
      ...(cases > 0 ? [write({ css: '.count-card input >> nth=0' }, String(cases))] : []),
      write({ role: 'textbox', name: say`Singles` }, String(singles)),
      open(button(say`Next`)),
    ];
  });
  return [
    { does: 'verb', name: say.as('noun')`Count` },
    titled(say.as('noun')`Count`),
    ...each,
    date(field('date'), record.date),
    ...counters(record.counters),
    save(say`Save the count`),
  ];
}

/** The order in which the page asks: as the goods stand on the shelf. */
function shelf(ledger: Ledger, record: RecordOf<'count'>): string[] {
  return shelfOrder(ledger)
    .map(({ product }) => product)
    .filter((product) => product in record.lines);
}

function counters(names: readonly string[] | undefined): Act[] {
  return (names ?? []).map((name, at) => write({ css: `.counters input >> nth=${at}` }, name));
}

/** Goods out, back and damaged, notes and coins by piece, and the rest of the money. */
function settleActs(record: RecordOf<'stall-close'>, names: Names): Act[] {
  const within = group(say`Goods of the stall`);
  const goods = [
    [record.out, say`Taken out`],
    [record.back, say`Brought back`],
    [record.damaged ?? {}, say`Damaged`],
  ] as const;
  const money = (['float', 'cards', 'cheques', 'paidout'] as const).flatMap((part) => {
    const cents = record[part] ?? 0;
    return cents === 0 ? [] : [write(field(part), moneyToType(cents, names.currency))];
  });
  return [
    date(field('date'), record.date),
    ...goods.flatMap(([lines, words]) =>
      goodsActs(lines, names, (name) => `${name}, ${words.toLowerCase()}`, within, false),
    ),
    ...pieces(record, names.currency),
    ...money,
    ...(record.note === undefined ? [] : [write(field('note'), record.note)]),
    ...counters(record.counters),
    save(say`Settle the stall`),
  ];
}

/** The notes and coins that were counted; else the fewest that make the cash. */
function pieces({ cash, tally }: RecordOf<'stall-close'>, currency: string): Act[] {
  let left = cash;
  return denominations(currency).flatMap((value) => {
    const many = tally === undefined ? Math.floor(left / value) : (tally[value] ?? 0);
    left -= many * value;
    return many === 0 ? [] : [write(field(`tally.${value}`), String(many))];
  });
}

function closingActs(): Act[] {
  return [
    page(say`Closing list`),
    open(link(say`Close the season`)),
    titled(say`Close the season`),
    write(field('second'), 'Sam Winter'),
    save(say`Close the season`),
    titled(say`Closing list`),
  ];
}
