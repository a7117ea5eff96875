import { describe, expect, it } from 'vitest';
import { english } from './english.ts';
import { languageFor } from './language.ts';
import { type Say, sayIn } from './say.ts';

const spanish = sayIn(languageFor('es'), {
  said: {
    Save: 'Guardar',
    '{0} of {1} to go.': 'De {1} faltan {0}.',
    '# unit left|# units left': { one: 'queda # unidad', other: 'quedan # unidades' },
    'verb§Count': 'Contar',
    'Go to {0}, or {1}.': 'Ve a {1} o {0}.',
    'A long text, broken in the code.': 'Un texto largo.',
  },
  told: {},
});

/** The same sentences in any language, as a screen would say them. */
function told(say: Say, number: number): (string | string[])[] {
  return [
    say`Save`,
    say`${number} of ${'12'} to go.`,
    say.count(number)`# unit left|# units left`,
    say.as('verb')`Count`,
    say.pieces`Go to ${'here'}, or ${'there'}.`,
    say`A long text,
      broken in the code.`,
    say`Not in the catalogue: ${number}`,
  ];
}

describe('say', () => {
  it('says English as it stands in the code', () => {
    expect(told(english, 1)).toEqual([
      'Save',
      '1 of 12 to go.',
      '1 unit left',
      'Count',
      ['Go to ', 'here', ', or ', 'there', '.'],
      'A long text, broken in the code.',
      'Not in the catalogue: 1',
    ]);
  });

  it('says another language by its catalogue, parts in the order of that language', () => {
    expect(told(spanish, 2000)).toEqual([
      'Guardar',
      'De 12 faltan 2,000.',
      'quedan 2,000 unidades',
      'Contar',
      ['Ve a ', 'there', ' o ', 'here', '.'],
      'Un texto largo.',
      'Not in the catalogue: 2,000',
    ]);
  });

  it('takes the form that the language has for a number', () => {
    const left = (number: number) => spanish.count(number)`# unit left|# units left`;
    expect([0, 1, 2].map(left)).toEqual([
      'quedan 0 unidades',
      'queda 1 unidad',
      'quedan 2 unidades',
    ]);
    expect(english.count(0)`# unit left|# units left`).toBe('0 units left');
  });

  it('never reads what a person typed as a place', () => {
    expect(english`${'{1} #'} of ${'x'}`).toBe('{1} # of x');
    expect(spanish.count(1)`# of ${'# {0}'}|# of ${'# {0}'}`).toBe('1 of # {0}');
  });
});
