import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Catalogue } from '../../src/words/catalogue.ts';
import { englishLanguage, type Language, languages } from '../../src/words/language.ts';
import { catalogueFindings } from './catalogue-findings.ts';
import { HOME, sourceFile, sourceFiles } from './source-file.ts';
import { wordsUsed } from './words-used.ts';

const others = languages.filter((language) => language !== englishLanguage);

describe('catalogues', () => {
  const used = wordsUsed(sourceFiles());

  it.each(others)('$name has every text of the code, with the same parts, and no other', (one) => {
    expect(used.said.size).toBeGreaterThan(1000);
    expect(used.told.size).toBeGreaterThan(100);
    expect(catalogueFindings(one, catalogueOf(one), used)).toEqual([]);
  });
});

describe('what is wrong with a catalogue is found', () => {
  const source = `
    export const a = say\`Save\`;
    export const b = say\`\${left} of \${total} to go.\`;
    export const c = say.count(n)\`# unit of \${name}|# units of \${name}\`;
    export const d = say.as('verb')\`Count\`;
    export const e = say.pieces\`Go to \${link}\`;`;
  const used = wordsUsed([
    sourceFile('src/web/a.ts', source),
    sourceFile('src/rules/b.ts', 'refusal(r, `There is no ` + `family $' + '{id}.`);'),
  ]);
  const [spanish = englishLanguage] = others;
  const right = {
    said: {
      Save: 'Guardar',
      '{0} of {1} to go.': 'Faltan {0} de {1}.',
      '# unit of {0}|# units of {1}': { one: 'una unidad de {0}', other: '# unidades de {0}' },
      'verb§Count': 'Contar',
      'Go to {0}': 'Ve a {0}',
    },
    told: { 'There is no family {0}.': 'No hay familia {0}.' },
  } satisfies Catalogue;
  const { Save: _, ...withoutOne } = right.said;

  it('finds nothing where all is right', () => {
    expect(catalogueFindings(spanish, right, used)).toEqual([]);
  });

  it.each<[string, Catalogue, RegExp]>([
    ['a missing key', { ...right, said: withoutOne }, /lacks "Save", said at src\/web\/a.ts:2/],
    ['an unused key', saying({ Old: 'Viejo' }), /nothing says Old/],
    ['a lost part', saying({ '{0} of {1} to go.': 'Faltan {0}.' }), /lost \{1\}/],
    ['an odd part', saying({ Save: 'Guardar {0}' }), /has \{0\}/],
    ['an empty text', saying({ Save: '' }), /empty/],
    ['one form', saying({ '# unit of {0}|# units of {1}': '# {0}' }), /one text/],
    ['a missing form', counting({ other: '# de {0}' }), /no form for one/],
    ['a form without its part', counting({ one: 'una', other: '# de {0}' }), /lost \{name\}/],
    ['a form without its number', counting({ one: '{0}', other: '{0}' }), /lost #/],
    ['a message with other parts', { ...right, told: { 'There is no family {0}.': 'No' } }, /lost/],
  ])('finds %s', (_name, catalogue, finding) => {
    expect(catalogueFindings(spanish, catalogue, used).join('\n')).toMatch(finding);
  });

  function saying(said: Catalogue['said']): Catalogue {
    return { ...right, said: { ...right.said, ...said } };
  }

  function counting(forms: { readonly one?: string; readonly other: string }): Catalogue {
    return saying({ '# unit of {0}|# units of {1}': forms });
  }
});

function catalogueOf({ tag }: Language): Catalogue {
  const path = join(HOME, 'src/words/catalogues', `${tag}.json`);
  return JSON.parse(readFileSync(path, 'utf8'));
}
