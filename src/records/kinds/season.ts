import Type from 'typebox';
import { common, Day, Reason, ShortId, Text } from '../fields.ts';

/** The season: its name, currency and days, what papers say of the group; `closed` once it is read-only. */
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
  deadlines: Type.Optional(Type.Array(Type.Object({ deadline: ShortId, name: Text, date: Day }))),
  closed: Type.Optional(
    Type.Object({ date: Day, second: Type.Optional(Text), reason: Type.Optional(Reason) }),
  ),
});
export type Season = Type.Static<typeof Season>;
