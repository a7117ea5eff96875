import Type from 'typebox';
import { CLOCK_PATTERN, DAY_PATTERN } from '../base/day.ts';
import { CountedLines, Minor, Note, ShortId, Tender, Text, UnitsOrNone } from './fields.ts';

/**
 * One line of a stall's sheet, as a phone at the stall wrote it: a sale, goods brought, cash taken
 * away, a count. It moves nothing: the `stall-close` made of the counts does. Lines are only ever
 * added; two sheets of one stall are merged by taking every line of both once, by `id`.
 */

const EntryId = Type.String({
  pattern: '^[A-Z0-9]{3}-[0-9a-z]{1,30}$',
  wanted: 'the id of a line on a stall sheet, like K7M-lz4k2q9',
});

/** Stalls open in local time, and so are their sheets. */
const LocalSecond = Type.String({
  pattern: `^${DAY_PATTERN}T${CLOCK_PATTERN}:[0-5]\\d$`,
  wanted: 'a local time as YYYY-MM-DDTHH:MM:SS',
});

/** Denomination in minor units (the value of one note or coin) → pieces. */
const Pieces = Type.Record(
  Type.String({ pattern: '^[1-9]\\d{0,9}$', wanted: 'the value of one note or coin' }),
  UnitsOrNone,
  { additionalProperties: false, wanted: 'pieces by denomination, like {"500":4,"25":12}' },
);

const What = Type.Union(
  [
    Type.Literal('ready'),
    Type.Literal('open'),
    Type.Literal('sold'),
    Type.Literal('paid'),
    Type.Literal('brought'),
    Type.Literal('drop'),
    Type.Literal('count'),
    Type.Literal('both'),
    Type.Literal('undo'),
  ],
  { wanted: 'ready, open, sold, paid, brought, drop, count, both or undo' },
);

export const StallEntry = Type.Object({
  /** The phone's own three signs, a dash, and what is unique on that phone. */
  id: EntryId,
  at: LocalSecond,
  what: What,
  /** `open`, `brought`: goods that came; `sold`: to a buyer; `count`: what is left. Units. */
  lines: Type.Optional(CountedLines),
  /** `count`: units that nobody can sell any more. */
  damaged: Type.Optional(CountedLines),
  /** `open`: the float; `drop`: cash taken away; `count`: cash in the box. */
  pieces: Type.Optional(Pieces),
  /** The same in minor units, where the currency's notes and coins are not known. */
  cents: Type.Optional(Minor),
  /** `count`: the card reader's total, all cheques, cash spent. Minor units. */
  cards: Type.Optional(Minor),
  cheques: Type.Optional(Minor),
  paidout: Type.Optional(Minor),
  /** `paid`: how this buyer paid, and the cash handed over in minor units. */
  tender: Type.Optional(Tender),
  handed: Type.Optional(Minor),
  /** Adults: who counted; of a drop, who gave the cash away and who holds it now. */
  names: Type.Optional(Type.Array(Text)),
  note: Type.Optional(Note),
  /** `undo`: lines that no longer count; `both`: counts that are added to each other. */
  of: Type.Optional(Type.Array(EntryId)),
  /** `ready`: what the readiness card says, by its points. */
  card: Type.Optional(Type.Record(ShortId, Text)),
});
export type StallEntry = Type.Static<typeof StallEntry>;
