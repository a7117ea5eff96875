import Type from 'typebox';
import { common, Day, LanguageTag, Minor, Reason, ShortId, Text } from '../fields.ts';

const SignedMinor = Type.Integer({
  minimum: -Number.MAX_SAFE_INTEGER,
  maximum: Number.MAX_SAFE_INTEGER,
  wanted: 'whole minor units, with a minus where money went out',
});

const BankingDays = Type.Integer({
  minimum: 0,
  maximum: 60,
  wanted: 'whole banking days, 0 to 60',
});

/**
 * The season: its name, currency and days, what papers say of the group; `closed` once it is
 * read-only.
 */
export const Season = Type.Object({
  ...common,
  kind: Type.Literal('season'),
  name: Text,
  currency: Type.String({ pattern: '^[A-Z]{3}$', wanted: 'an ISO 4217 code like USD' }),
  starts: Day,
  ends: Day,
  /** The group's name as printed on papers; without it, the book's own short name. */
  group: Type.Optional(Text),
  /** Whom families can ask about a paper: someone other than the treasurer. */
  ask: Type.Optional(Text),
  /** The language of papers that are for no family, or for one without its own (BCP 47). */
  language: Type.Optional(LanguageTag),
  /** How pooled credit is shared; without it, by minutes worked and largest remainder. */
  sharing: Type.Optional(
    Type.Object({
      weights: Type.Optional(
        Type.Union([Type.Literal('minutes'), Type.Literal('even')], { wanted: 'minutes or even' }),
      ),
      method: Type.Optional(
        Type.Union([Type.Literal('remainder'), Type.Literal('divisor'), Type.Literal('rota')], {
          wanted: 'remainder, divisor or rota',
        }),
      ),
      /** Pools may go where they reach goals and steps; counts only if chosen before any stall. */
      lift: Type.Optional(Type.Boolean({ wanted: 'true or false' })),
    }),
  ),
  /** `announced`: what the supplier says that it will take that day (minor units). */
  deadlines: Type.Optional(
    Type.Array(
      Type.Object({
        deadline: ShortId,
        name: Text,
        date: Day,
        announced: Type.Optional(Minor),
      }),
    ),
  ),
  /** The bank's days, where they are not those of common practice. */
  banking: Type.Optional(
    Type.Object({
      holidays: Type.Optional(Type.Array(Day)),
      cashDays: Type.Optional(BankingDays),
      chequeDays: Type.Optional(BankingDays),
      cardDays: Type.Optional(BankingDays),
    }),
  ),
  /** Lines of its statement that the bank itself got wrong, and those that take them back. */
  bankErrors: Type.Optional(
    Type.Array(
      Type.Object({
        date: Day,
        cents: SignedMinor,
        text: Type.Optional(Text),
        reference: Type.Optional(Text),
      }),
    ),
  ),
  closed: Type.Optional(
    Type.Object({ date: Day, second: Type.Optional(Text), reason: Type.Optional(Reason) }),
  ),
});
export type Season = Type.Static<typeof Season>;
