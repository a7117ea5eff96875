import Type from 'typebox';
import { CLOCK_PATTERN, DAY_PATTERN } from '../base/day.ts';
import { ID_TEXT_MAX, UUID7_PATTERN } from '../base/id.ts';

/**
 * The field types that all kinds of record share. Each is a JSON Schema (draft 2020-12) with a
 * `wanted` text: the words a person reads when what they wrote does not fit.
 */

export const NOTE_MAX = 500;
const TEXT_MAX = 200;
const WHOLE_MAX = Number.MAX_SAFE_INTEGER;

export const RecordId = Type.String({
  pattern: `^${UUID7_PATTERN}$`,
  wanted: 'a UUID version 7, like 0195f3c2-7d1a-7c3e-9a41-1f0c6e2b9d10',
});

/**
 * A short id chosen by the group: product, seller, family, stall, host, neighbour, prize step. The
 * one word of these letters that every JavaScript object answers to is left out: `lines` is an
 * object, and asking it for a product of that name would find something that nobody wrote.
 */
export const ShortId = Type.String({
  pattern: `^[a-z0-9-]{1,${ID_TEXT_MAX}}$`,
  wanted: `1 to ${ID_TEXT_MAX} of the characters a-z, 0-9 and -`,
});

export const Day = Type.String({
  pattern: `^${DAY_PATTERN}$`,
  wanted: 'a day that exists, as YYYY-MM-DD',
});

export const Instant = Type.String({
  pattern: `^${DAY_PATTERN}T${CLOCK_PATTERN}:[0-5]\\d\\.\\d{3}Z$`,
  wanted: 'a time in UTC with milliseconds, like 2027-02-01T18:00:00.000Z',
});

export const LocalTime = Type.String({
  pattern: `^${DAY_PATTERN}T${CLOCK_PATTERN}$`,
  wanted: 'a local time as YYYY-MM-DDTHH:MM',
});

/** A shift may leave the day out: it is then the stall's own day. */
export const ShiftTime = Type.String({
  pattern: `^(?:${DAY_PATTERN}T)?${CLOCK_PATTERN}$`,
  wanted: 'a local time as YYYY-MM-DDTHH:MM or HH:MM',
});

export const LanguageTag = Type.String({
  pattern: '^[A-Za-z]{2,8}(?:-[A-Za-z0-9]{1,8})*$',
  maxLength: 35,
  wanted: 'a language tag (BCP 47) like es or zh-Hans',
});

export const Text = Type.String({
  minLength: 1,
  maxLength: TEXT_MAX,
  wanted: `1 to ${TEXT_MAX} characters`,
});

export const Note = Type.String({
  maxLength: NOTE_MAX,
  wanted: `at most ${NOTE_MAX} characters`,
});

export const Reason = Type.String({
  minLength: 1,
  maxLength: NOTE_MAX,
  wanted: `a reason of 1 to ${NOTE_MAX} characters`,
});

export const Units = Type.Integer({
  minimum: 1,
  maximum: WHOLE_MAX,
  wanted: 'a whole number of 1 or more',
});

export const UnitsOrNone = Type.Integer({
  minimum: 0,
  maximum: WHOLE_MAX,
  wanted: 'a whole number, 0 or more',
});

/** Whole minor units of the season's currency (cents, pence, yen). */
export const Minor = Type.Integer({
  minimum: 0,
  maximum: WHOLE_MAX,
  wanted: 'a whole number of minor units (cents), 0 or more',
});

const LINES_WANTED = 'product ids with whole units, like {"honey":5}';

export const Lines = Type.Record(ShortId, Units, {
  additionalProperties: false,
  wanted: LINES_WANTED,
});

/** Like lines, but a product that was looked for and not there may say 0. */
export const CountedLines = Type.Record(ShortId, UnitsOrNone, {
  additionalProperties: false,
  wanted: LINES_WANTED,
});

export const Tender = Type.Union(
  [Type.Literal('cash'), Type.Literal('cheque'), Type.Literal('card')],
  { wanted: 'cash, cheque or card' },
);

export const Counters = Type.Tuple([Text, Text], { wanted: 'the names of two people' });

/** What every record has. */
export const common = {
  id: RecordId,
  at: Instant,
  by: Type.String({ minLength: 1, maxLength: ID_TEXT_MAX, wanted: 'the id of a user' }),
  note: Type.Optional(Note),
  replaces: Type.Optional(RecordId),
};

/** What every movement has: the day it happened on, and `late` after the season was closed. */
export const movement = {
  ...common,
  date: Day,
  late: Type.Optional(Reason),
};

export type Lines = Readonly<Record<string, number>>;
