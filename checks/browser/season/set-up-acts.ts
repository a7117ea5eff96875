import type { Kind, RecordOf } from '../../../src/records/record.ts';
import { moneyToType } from '../../../src/web/parts/typed.ts';
import { say } from '../../../src/web/say.ts';
import { languages } from '../../../src/words/language.ts';
import {
  type Act,
  button,
  choose,
  date,
  field,
  link,
  open,
  page,
  pick,
  save,
  titled,
  write,
} from './act.ts';
import type { Names } from './names.ts';

/** What is set up, each on its own page: found by Set-up, its link, and the button that adds. */

const tick = (label: string): Act => pick({ role: 'checkbox', name: label });

function part(name: string, title = name): Act[] {
  return [page(say`Set-up`), open(link(name, { css: 'main' })), titled(title)];
}

/** One more of a list's things: its form opens, is filled, and closes once it is saved. */
function added(words: string, it: string, fields: readonly Act[]): Act[] {
  return [open(button(words)), ...fields, save(it), { does: 'see', at: button(words) }];
}

const maybe = (path: string, text: string | undefined): Act[] =>
  text === undefined ? [] : [write(field(path), text)];

/** The four questions of a first start; what they do not ask comes on the season's own page. */
export function seasonActs(record: RecordOf<'season'>, names: Names): Act[] {
  const { deadlines = [], sharing } = record;
  return [
    write(field('group'), record.group ?? ''),
    write(field('season'), record.name),
    write(field('currency'), record.currency),
    date(field('starts'), record.starts),
    date(field('ends'), record.ends),
    open(button(say`Start an empty season`)),
    titled(say`Places`),
    ...part(say`Season and deadlines`),
    ...maybe('ask', record.ask),
    save(say`Save the season`),
    ...deadlines.flatMap(({ name, date: day, announced }) =>
      added(say`Add a deadline`, say`Add the deadline`, [
        write(field('due'), name),
        date(field('due-day'), day),
        ...(announced === undefined
          ? []
          : [write(field('announced'), moneyToType(announced, names.currency))]),
      ]),
    ),
    ...(sharing === undefined
      ? []
      : [
          ...part(say`Sharing rule`),
          ...(sharing.lift ? [tick(say`Pools may go where they reach goals and prize steps`)] : []),
          save(say`Save the sharing rule`),
        ]),
  ];
}

/** @param before the kind of the record before: its page is still open */
export function setUpActs(
  record: RecordOf<
    | 'proceeds'
    | 'product'
    | 'family'
    | 'seller'
    | 'host'
    | 'neighbour'
    | 'level'
    | 'stall'
    | 'hold'
    | 'choice'
  >,
  before: Kind | undefined,
  names: Names,
  known: ReadonlySet<string>,
): Act[] {
  const to = (name: string, title = name) => (before === record.kind ? [] : part(name, title));
  switch (record.kind) {
    case 'product':
      return [...to(say`Products and prices`, say`Products`), ...product(record, names, known)];
    case 'family':
      return [
        ...to(say`Families`),
        ...added(say`Add a family`, say`Add the family`, [
          write(field('name'), record.name),
          ...maybe('contact', record.contact),
          ...language(record.language),
        ]),
      ];
    case 'seller':
      return [
        ...to(say`Sellers`),
        ...added(say`Add a seller`, say`Add the seller`, [
          write(field('name'), record.name),
          choose(field('family'), names.of(record.family)),
          ...maybe('goal', record.goal === undefined ? undefined : String(record.goal)),
        ]),
      ];
    case 'host':
      return [
        ...to(say`Host shops`),
        ...added(say`Add a host shop`, say`Add the host shop`, [write(field('name'), record.name)]),
      ];
    case 'neighbour':
      return [
        ...to(say`Neighbour groups`),
        ...added(say`Add a neighbour group`, say`Add the neighbour group`, [
          write(field('name'), record.name),
        ]),
      ];
    case 'level':
      return [...to(say`Prize steps`), ...level(record)];
    case 'proceeds':
      return [...to(say`Proceeds steps`), ...proceeds(record, names)];
    case 'stall':
      return [...to(say`Stalls`), ...stall(record, names)];
    case 'hold':
      return [...to(say`Stop-sales`), ...hold(record, names)];
    case 'choice':
      return [
        ...(before === 'choice' ? [] : [...part(say`Prizes and choices`, say`Prizes`)]),
        choice(record, names),
      ];
  }
}

/** Papers are in the app's languages; another one stays with the family's own book. */
function language(tag: string | undefined): Act[] {
  const known = languages.find((one) => one.tag === tag);
  return known === undefined ? [] : [choose(field('language'), known.name)];
}

function product(record: RecordOf<'product'>, names: Names, known: ReadonlySet<string>): Act[] {
  const price = write(field('price'), moneyToType(record.price, names.currency));
  const size = write(field('case'), String(record.case));
  if (known.has(record.product)) {
    const words = say`New price of ${record.name}`;
    const from = record.from === undefined ? [] : [date(field('from'), record.from)];
    return added(words, say`Save the new price`, [price, size, ...from]);
  }
  return added(say`Add a product`, say`Add the product`, [
    write(field('name'), record.name),
    price,
    size,
    ...maybe('storage', record.storage),
    ...(record.returnable ? [tick(say`The supplier takes unsold units back`)] : []),
  ]);
}

function level(record: RecordOf<'level'>): Act[] {
  return added(say`Add a prize step`, say`Add the prize step`, [
    write(field('units'), String(record.units)),
    write(field('prize'), record.prize),
    ...maybe('choices', record.choices?.join(', ')),
    ...(record.each === false ? [tick(say`It takes the place of the lower steps`)] : []),
  ]);
}

function proceeds(record: RecordOf<'proceeds'>, names: Names): Act[] {
  const { waiver, steps } = record;
  const each = steps.flatMap(({ from, cents }) =>
    added(say`Add a step`, say`Add the step`, [
      write(field('from'), String(from)),
      write(field('cents'), moneyToType(cents, names.currency)),
    ]),
  );
  if (waiver === undefined) return each;
  const text = moneyToType(waiver.cents, names.currency);
  return [...each, write(field('waiver'), text), save(say`Save the terms`)];
}

/** The stall is planned in set-up; who works there is written on its own page. */
function stall(record: RecordOf<'stall'>, names: Names): Act[] {
  const shifts = record.shifts.flatMap(({ seller, from, to }, at): Act[] => {
    const row = { css: `.shift-row >> nth=${at}` };
    return [
      ...(at === 0 ? [] : [open(button(say`Another shift`))]),
      choose(field(`shift.${at}`), names.of(seller)),
      date({ css: 'input[type=time] >> nth=0', within: row }, from),
      date({ css: 'input[type=time] >> nth=1', within: row }, to),
    ];
  });
  const planned = added(say`Add a stall`, say`Add the stall`, [
    choose(field('host'), names.of(record.host)),
    date(field('starts'), record.starts),
    date(field('ends'), record.ends),
  ]);
  if (shifts.length === 0) return planned;
  return [
    ...planned,
    ...toStall(record, names),
    open(button(say`Add shifts`)),
    ...shifts,
    save(say`Save the shifts`),
  ];
}

/** From anywhere to a stall's page: the list of stalls, the day, the place and time. */
export function toStall(record: RecordOf<'stall'>, names: Names): Act[] {
  const host = names.of(record.host);
  const times = say`${record.starts.slice(11)} to ${record.ends.slice(11)}`;
  const day = { role: 'region' as const, name: say.day(record.starts.slice(0, 10)) };
  return [page(say`Stalls`), open(link(`${host}, ${times}`, day)), titled(host)];
}

function hold(record: RecordOf<'hold'>, names: Names): Act[] {
  const name = names.of(record.product);
  if (record.lifted) {
    return [
      open(button(say`Edit ${say`the stop-sale of ${name}`}`)),
      tick(say`Lifted: it may be sold again`),
      save(say`Save the changes`),
    ];
  }
  return added(say`Add a stop-sale`, say`Add the stop-sale`, [
    choose(field('product'), name),
    ...maybe('lot', record.lot),
    write(field('reason'), record.reason),
  ]);
}

function choice(record: RecordOf<'choice'>, names: Names): Act {
  const name = say`Choice of ${names.of(record.seller)}: ${names.of(record.level)}`;
  const words = record.choice === 'none' ? say`No prize, thank you` : record.choice;
  return { does: 'choose', at: { role: 'combobox', name }, words, saves: true };
}
