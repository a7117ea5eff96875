import { expect, it } from 'vitest';
import { saysIn } from './all-languages.ts';
import { toldIn } from './told.ts';

const told = toldIn({
  'The season was closed on {0}': 'La temporada se cerró el {0}',
  '{0}; say why.': '{0}; di por qué.',
  'whole units': 'unidades enteras',
  '{0}: wanted {1}. Nothing was changed.': '{0}: se espera {1}. No se cambió nada.',
  'The book has no {0} {1}; add it first.': 'El libro no tiene {0} {1}; agrégalo.',
  seller: 'vendedor',
  'a header: {"book":"{0}"}': 'un encabezado: {"book":"{0}"}',
  'one JSON object on the line, from { to }': 'un objeto JSON en la línea, de { a }',
});

it.each([
  ['whole units', 'unidades enteras'],
  [
    'The book has no seller a+b (x); add it first.',
    'El libro no tiene vendedor a+b (x); agrégalo.',
  ],
  [
    'lines.honey: wanted whole units. Nothing was changed.',
    'lines.honey: se espera unidades enteras. No se cambió nada.',
  ],
  [
    'The season was closed on 2027-04-18; say why.',
    'La temporada se cerró el 2027-04-18; di por qué.',
  ],
  ['a header: {"book":"x/1"}', 'un encabezado: {"book":"x/1"}'],
  ['one JSON object on the line, from { to }', 'un objeto JSON en la línea, de { a }'],
  [
    'The book has no seller constructor; add it first.',
    'El libro no tiene vendedor constructor; agrégalo.',
  ],
  ['Something that nobody knows', 'Something that nobody knows'],
  ['', ''],
])('%j is told as %j', (english, spanish) => {
  expect(told(english)).toBe(spanish);
});

it('keeps what a language has no words for', () => {
  expect(toldIn({})('The disk is full.')).toBe('The disk is full.');
});

it.each(['es', 'zh-Hans'])('can tell whatever comes in %s, by every template there is', (tag) => {
  expect(saysIn(tag).told('Nobody ever says this.')).toBe('Nobody ever says this.');
});
