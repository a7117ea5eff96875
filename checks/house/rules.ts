import {
  functionSizes,
  isScript,
  isTest,
  lineAt,
  type SourceFile,
  sourceFile,
  visit,
  withoutComments,
} from './source-file.ts';

/**
 * The house rules that a machine can hold, one a row: what it looks at, what it finds, and a bad
 * sample that it must find something in (its teeth).
 */
export interface HouseRule {
  readonly name: string;
  readonly appliesTo: (file: SourceFile) => boolean;
  /** One line a finding: the line number and what is wrong. */
  readonly find: (file: SourceFile) => string[];
  readonly bad: readonly SourceFile[];
}

const COLUMNS_MAX = 100;
const FILE_LINES_MAX = 500;
const FUNCTION_LINES_MAX = 70;
const SCREEN_LINES_MAX = 120;

const CORE = /^src\/(?:base|solvers|records|intake|journal|ledger|rules|questions|statements)\//;
const SHOWN = /^src\/(?:web|statements|questions|paper|rules|intake|server|start)\//;

/** This folder names what it forbids. */
const isElsewhere = ({ path }: SourceFile): boolean => !path.startsWith('checks/house/');

const scriptElsewhere = (file: SourceFile): boolean => isScript(file) && isElsewhere(file);

/** A rule that is a pattern on lines, with the reason it is told with. */
function forbids(pattern: RegExp, wanted: string): HouseRule['find'] {
  return ({ lines }) =>
    lines.flatMap((line, index) => {
      const said = pattern.exec(line)?.[0];
      return said === undefined ? [] : [`${index + 1}: ${said}: ${wanted}`];
    });
}

/** The same on code alone: what a comment says does not run. */
function codeForbids(pattern: RegExp, wanted: string): HouseRule['find'] {
  const find = forbids(pattern, wanted);
  return (file) => find(sourceFile(file.path, withoutComments(file)));
}

const LEFT_OUT = anyOf(
  /\b(?:test|it|describe|suite|bench)(?:\.\w+)*\.(?:skip|only|todo|skipIf|runIf|fails)\b/,
  /\bx(?:it|test|describe)\(/,
);

const MACHINE = anyOf(
  /\bDate\.now\b|\bnew Date\(\)|\bDate\(\)|\bperformance\.|\bset(?:Timeout|Interval)\(/,
  /\bMath\.random\b|\bcrypto\./,
  /\bprocess\.|\bfetch\(|['"]node:/,
  /\.toLocale\w+\(|\.localeCompare\(|\bIntl\.\w+\(\s*(?:\)|undefined|\[\])/,
);

function anyOf(...patterns: RegExp[]): RegExp {
  return new RegExp(patterns.map((pattern) => pattern.source).join('|'));
}

const sample = sourceFile;
const longFunction = (lines: number): string => `function f() {\n${'  g();\n'.repeat(lines)}}\n`;

export const houseRules: readonly HouseRule[] = [
  {
    name: 'no test is left out or alone',
    appliesTo: scriptElsewhere,
    find: codeForbids(LEFT_OUT, 'a test that does not run checks nothing'),
    bad: [
      sample('src/a.test.ts', "test.skip('x', () => {});"),
      sample('src/a.test.ts', "describe.concurrent.only('x', () => {});"),
    ],
  },
  {
    name: 'nothing is left for later in the text',
    appliesTo: isElsewhere,
    find: forbids(/\b(?:TODO|FIXME|HACK)\b/, 'do it now, or write it down as an issue'),
    bad: [sample('src/a.ts', '// TODO later'), sample('src/a.css', '/* FIXME */')],
  },
  {
    name: 'lines have at most 100 columns',
    appliesTo: () => true,
    find: ({ lines }) =>
      lines.flatMap((line, index) =>
        [...line].length > COLUMNS_MAX ? [`${index + 1}: ${[...line].length} columns`] : [],
      ),
    bad: [sample('src/a.ts', 'x'.repeat(101))],
  },
  {
    name: 'files have at most 500 lines',
    appliesTo: () => true,
    find: ({ lines }) =>
      lines.length - 1 > FILE_LINES_MAX ? [`1: ${lines.length - 1} lines; part it`] : [],
    bad: [sample('src/a.ts', 'x;\n'.repeat(501))],
  },
  {
    name: 'functions have at most 70 lines, screens 120',
    appliesTo: (file) => isScript(file) && !isTest(file),
    find: (file) => {
      const most = file.path.endsWith('.tsx') ? SCREEN_LINES_MAX : FUNCTION_LINES_MAX;
      const long = functionSizes(file).filter(({ lines }) => lines > most);
      return long.map(({ name, line, lines }) => `${line}: ${name} has ${lines} lines`);
    },
    bad: [sample('src/a.ts', longFunction(70)), sample('src/web/a.tsx', longFunction(120))],
  },
  {
    name: 'exports have names',
    appliesTo: (file) => isScript(file) && !file.path.endsWith('.config.ts'),
    find: (file) => {
      const found: string[] = [];
      visit(file, {
        ExportDefaultDeclaration: ({ start }) => {
          found.push(`${lineAt(file, start)}: export it by its name`);
        },
      });
      return found;
    },
    bad: [sample('src/a.ts', 'export default 1;')],
  },
  {
    name: 'core rooms read no clock, randomness, machine, network or locale',
    appliesTo: (file) => CORE.test(file.path) && isScript(file) && !isTest(file),
    find: codeForbids(MACHINE, 'it comes in as an argument'),
    bad: [
      'Date.now();',
      'new Date();',
      'Math.random();',
      'a.toLocaleString();',
      'a.localeCompare(b);',
      'new Intl.NumberFormat();',
      'new Intl.Collator(undefined);',
      'performance.now();',
      "import { x } from 'node:fs';",
    ].map((text) => sample('src/base/a.ts', text)),
  },
  {
    name: 'words are those of the house',
    appliesTo: (file) => !isTest(file),
    find: forbids(
      /\b(?:debtors?|oops|whoops|whitelist|blacklist|drop-?ship\w*|synergy)\b/i,
      'see the words of the house: a family has an amount still to pay, or is in credit',
    ),
    bad: [sample('src/a.ts', "const debtor = 'x';"), sample('src/web/a.tsx', '<p>Oops</p>')],
  },
  {
    name: 'what is shown has no exclamation marks',
    appliesTo: (file) => SHOWN.test(file.path) && isScript(file) && !isTest(file),
    find: (file) => {
      const found: string[] = [];
      const look = (text: string, start: number): void => {
        if (/\p{L}!(?:\s|$)/u.test(text)) found.push(`${lineAt(file, start)}: ${text.trim()}`);
      };
      visit(file, {
        Literal: ({ value, start }) => {
          if (typeof value === 'string') look(value, start);
        },
        TemplateElement: ({ value, start }) => look(value.raw, start),
        JSXText: ({ value, start }) => look(value, start),
      });
      return found;
    },
    bad: [
      sample('src/web/a.tsx', 'export const a = <p>Saved!</p>;'),
      sample('src/statements/a.ts', 'export const a = `Well done! {b}`;'),
    ],
  },
  {
    name: 'nothing names the machine it was written on',
    appliesTo: isElsewhere,
    find: forbids(/(?:^|["'`\s(])\/(?:work|home|root|Users)\//, 'paths start at the repository'),
    bad: [sample('src/a.ts', "read('/home/somebody/x');")],
  },
];
