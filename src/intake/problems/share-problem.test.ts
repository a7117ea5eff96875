import { describe, expect, it } from 'vitest';
import { readShareProblem } from './share-problem.ts';

const fine = { products: { honey: 10 }, sellers: [{ seller: 'ada', weight: 90 }] };

/** A problem with some of its parts changed. */
function with_(parts: object): string {
  return JSON.stringify({ ...fine, ...parts });
}

function seller(parts: object): string {
  return with_({ sellers: [{ seller: 'ada', weight: 90, ...parts }] });
}

describe('a share-out problem', () => {
  it('is taken as it is, with what a seller carries and has locked', () => {
    const read = readShareProblem(seller({ carried: -0.4, locked: { honey: 2 } }));
    expect(read.ok && read.value.sellers[0]).toEqual({
      seller: 'ada',
      weight: 90,
      carried: -0.4,
      locked: { honey: 2 },
    });
  });

  it.each([
    ['nothing', '', '', 'one JSON object'],
    ['a text cut off', '{"products":{"honey":1', '', 'one JSON object'],
    ['a list', '[]', '', 'one JSON object'],
    ['no sellers', with_({ sellers: [] }), 'sellers', 'a list of sellers'],
    ['all weights zero', seller({ weight: 0 }), 'sellers', 'a weight above 0'],
    ['a negative weight', seller({ weight: -1 }), 'sellers.0.weight', 'a whole number'],
    ['half a weight', seller({ weight: 0.5 }), 'sellers.0.weight', 'a whole number'],
    ['a weight in words', seller({ weight: '90' }), 'sellers.0.weight', 'a whole number'],
    ['negative units', with_({ products: { honey: -1 } }), 'products.honey', 'a whole number'],
    ['half a unit', with_({ products: { honey: 1.5 } }), 'products.honey', 'a whole number'],
    ['an empty pool', with_({ products: {} }), 'products', 'at least one unit'],
    ['only zeros', with_({ products: { honey: 0 } }), 'products', 'at least one unit'],
    ['locked above the total', seller({ locked: { honey: 11 } }), 'sellers.0.locked.honey', '10'],
    ['locked elsewhere', seller({ locked: { jam: 1 } }), 'sellers.0.locked.jam', 'a product'],
    ['a negative lock', seller({ locked: { honey: -1 } }), 'sellers.0.locked.honey', 'whole'],
    ['a word for what is carried', seller({ carried: 'much' }), 'sellers.0.carried', 'units'],
    ['an unknown rule', with_({ method: 'lots' }), 'method', 'remainder, divisor or rota'],
    [
      'a seller twice',
      with_({ sellers: [fine.sellers[0], fine.sellers[0]] }),
      'sellers.1.seller',
      'each seller once',
    ],
    [
      'weights too large to tell apart',
      with_({ products: { honey: 9_000_000_000 }, sellers: [{ seller: 'ada', weight: 1e9 }] }),
      'sellers',
      'smaller weights',
    ],
    ['a number with no exact value', with_({}).replace('10', '1e400'), 'products.honey', 'whole'],
    [
      'a field twice',
      with_({}).replace('"honey":10', '"honey":10,"honey":3'),
      'products.honey',
      '',
    ],
  ])('is refused with %s: one line says where and what is wanted', (_, text, field, wanted) => {
    const read = readShareProblem(text);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.refusal.field).toBe(field);
    expect(read.refusal.wanted).toContain(wanted);
  });
});
