import Type from 'typebox';
import { ID_TEXT_MAX } from '../../base/id.ts';
import { Lines, movement, ShortId } from '../fields.ts';

/** Pooled credit given to sellers. */
export const Shareout = Type.Object({
  ...movement,
  kind: Type.Literal('shareout'),
  pool: Type.String({
    pattern: `^(?:post|gift|stall:[a-z0-9-]{1,${ID_TEXT_MAX}})$`,
    wanted: 'post, gift or stall:<stall>',
  }),
  /** What the shares went by; without it, by the group's own rule. */
  basis: Type.Optional(
    Type.Union(
      [Type.Literal('minutes'), Type.Literal('even'), Type.Literal('hand'), Type.Literal('lift')],
      { wanted: 'minutes, even, hand or lift' },
    ),
  ),
  lines: Type.Record(ShortId, Lines, {
    additionalProperties: false,
    wanted: 'units by seller and product, like {"ada":{"honey":3}}',
  }),
});
export type Shareout = Type.Static<typeof Shareout>;
