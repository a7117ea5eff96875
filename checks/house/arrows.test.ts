import { globSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import extractConfig from 'dependency-cruiser/config-utl/extract-depcruise-config';
import { expect, test } from 'vitest';
import { HOME } from './source-file.ts';

/** Rooms import only what ARCHITECTURE.md lets them: the rules are made from its table. */
const CONFIG = join(HOME, '.dependency-cruiser.mjs');

async function cruised(baseDir: string): Promise<ICruiseResult> {
  const { forbidden = [], options } = await extractConfig(CONFIG);
  const ruleSet = { forbidden };
  const { output } = await cruise(['src'], { ...options, ruleSet, validate: true, baseDir });
  if (typeof output === 'string') throw new Error(output);
  return output;
}

const told = ({ summary }: ICruiseResult): string[] =>
  summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`);

test('every arrow between rooms is in the table', async () => {
  const result = await cruised(HOME);
  expect(told(result)).toEqual([]);
  // With a parser that does not fit, the tool looks at nothing and finds nothing.
  const looked = new Set(result.modules.map((module) => module.source));
  const scripts = globSync('src/**/*.{ts,tsx}', { cwd: HOME });
  expect(scripts.length).toBeGreaterThan(100);
  expect(scripts.filter((path) => !looked.has(path))).toEqual([]);
  expect(result.summary.totalDependenciesCruised).toBeGreaterThan(scripts.length);
});

test('arrows that are not in the table are found', async () => {
  const house = mkdtempSync(join(tmpdir(), 'cratebook-house-'));
  const files: Record<string, string> = {
    'src/base/a.ts': "import { b } from '../server/b.ts';\nexport const a = b;\n",
    'src/server/b.ts': 'export const b = 1;\n',
    'src/ledger/clock.ts':
      "import { readFileSync } from 'node:fs';\nexport const x = readFileSync;\n",
    'src/records/one.ts': "import { two } from './two.ts';\nexport const one = () => two;\n",
    'src/records/two.ts': "import { one } from './one.ts';\nexport const two = () => one;\n",
    'src/server/sql.ts':
      "import { DatabaseSync } from 'node:sqlite';\nexport const d = DatabaseSync;\n",
    'src/web/screen.tsx':
      "import type { d } from '../server/sql.ts';\nexport const s = (x: typeof d) => <p>{x}</p>;\n",
  };
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(house, path)), { recursive: true });
    writeFileSync(join(house, path), text);
  }
  const names = told(await cruised(house)).join('\n');
  rmSync(house, { recursive: true });
  expect(names).toContain('src/base/a.ts → src/server/b.ts');
  expect(names).toContain('core-reads-no-machine: src/ledger/clock.ts');
  expect(names).toContain('no-cycles: src/records/one.ts');
  expect(names).toContain('only-storage-knows-sql: src/server/sql.ts');
  expect(names).toContain('src/web/screen.tsx → src/server/sql.ts');
});
