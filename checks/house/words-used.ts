import type { ESTree } from 'vite';
import { isTest, lineAt, type SourceFile, visit } from './source-file.ts';

/** The texts that the code says, read from its syntax: what every catalogue has to have. */
export interface WordsUsed {
  /** Keys of `say` texts, each with the first place that says it. */
  readonly said: ReadonlyMap<string, WordsPlace>;
  /** Templates of messages that are made in English and translated where they are shown. */
  readonly told: ReadonlyMap<string, WordsPlace>;
}

export interface WordsPlace {
  /** `src/web/frame.tsx:21` */
  readonly where: string;
  /** The code of the parts `{0}`, `{1}`…, for whoever translates. */
  readonly parts: readonly string[];
}

/** Rooms whose messages reach the app in English. */
const TELLS =
  /^src\/(?:intake|rules|records|server|contract\/shapes|statements\/pool-refusal-words)\b/;
/** Of these: words to read by, samples, headers and what only programs read. */
const SILENT = new RegExp(
  [
    '/(?:quick|problems|supplier/sort-words)',
    'one-line/line-words',
    '-samples\\.ts|-columns\\.ts|/test-[^/]*$',
    'app-files|description|guard',
  ].join('|'),
);
const TELLS_WHOLLY = /\/rules\/named-things\.ts$/;

export function wordsUsed(files: readonly SourceFile[]): WordsUsed {
  const said = new Map<string, WordsPlace>();
  const told = new Map<string, WordsPlace>();
  const own = files.filter((file) => /^src\/.*\.tsx?$/.test(file.path) && !isTest(file));
  for (const file of own) {
    addSaid(file, said);
    if (TELLS.test(file.path) && !SILENT.test(file.path)) addTold(file, told);
  }
  return { said, told };
}

const SAYS = /(?:^|[.#])(?:say|english)$/;

function addSaid(file: SourceFile, said: Map<string, WordsPlace>): void {
  visit(file, {
    TaggedTemplateExpression: ({ tag, quasi, start }) => {
      const key = keyOf(file, tag, quasi);
      if (key === undefined || said.has(key)) return;
      const parts = quasi.expressions.map((part) => file.text.slice(part.start, part.end));
      said.set(key, { where: `${file.path}:${lineAt(file, start)}`, parts });
    },
  });
}

/** The key of a text by its tag: say, say.pieces, say.count(…) or say.as('…'). */
function keyOf(
  file: SourceFile,
  tag: ESTree.Expression,
  quasi: ESTree.TemplateLiteral,
): string | undefined {
  const text = (node: ESTree.Node) => file.text.slice(node.start, node.end);
  const key = templateText(quasi).replace(/\s*\n\s*/g, ' ');
  if (SAYS.test(text(tag))) return key;
  const member = tag.type === 'CallExpression' ? tag.callee : tag;
  if (member.type !== 'MemberExpression' || !SAYS.test(text(member.object))) return undefined;
  const name = text(member.property);
  if (name === 'pieces' || name === 'count') return key;
  const [meaning] = tag.type === 'CallExpression' ? tag.arguments : [];
  if (name !== 'as' || meaning?.type !== 'Literal') return undefined;
  return `${meaning.value}§${key}`;
}

function templateText({ quasis }: ESTree.TemplateLiteral): string {
  return quasis.map(({ value }, at) => (at === 0 ? '' : `{${at - 1}}`) + value.cooked).join('');
}

/** A message has at least two words, or stands where a finding says what is wanted. */
function addTold(file: SourceFile, told: Map<string, WordsPlace>): void {
  const isWhole = TELLS_WHOLLY.test(file.path);
  /** Up to here, texts are parts of something that was looked at as a whole. */
  let doneTo = 0;
  const add = (key: string, start: number, isWanted = false): void => {
    const isMessage = /\p{L}[,;:]? \S*[\p{L}{]/u.test(key);
    if (!(isMessage || (/\p{L}{2,}/u.test(key) && (isWanted || isWhole)))) return;
    if (/[\\^$]\w|=>|^[\w-]+; |^<|'(?:none|self)'|max-age/.test(key) || told.has(key)) return;
    told.set(key, { where: `${file.path}:${lineAt(file, start)}`, parts: [] });
  };
  visit(file, {
    ImportDeclaration: ({ end }) => {
      doneTo = end;
    },
    BinaryExpression: (node) => {
      const whole = sumText(node);
      if (whole === undefined || node.start < doneTo) return;
      let at = 0;
      add(
        whole.replace(/\{\d+\}/g, () => `{${at++}}`),
        node.start,
      );
      // Its parts are no messages of their own; the tree is walked from outside in.
      doneTo = node.end;
    },
    Property: ({ key, value }) => {
      const isWanted = file.text.slice(key.start, key.end) === 'wanted';
      const text = plainText(value);
      if (text !== undefined) add(text, value.start, isWanted);
    },
    TemplateLiteral: (node) => {
      if (node.start >= doneTo) add(templateText(node), node.start);
    },
    Literal: ({ value, start }) => {
      if (typeof value === 'string' && start >= doneTo) add(value, start);
    },
  });
}

function plainText(node: ESTree.Node): string | undefined {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : undefined;
  return node.type === 'TemplateLiteral' ? templateText(node) : undefined;
}

/** The text of literals that are joined by `+`. */
function sumText(node: ESTree.Node): string | undefined {
  if (node.type === 'ParenthesizedExpression') return sumText(node.expression);
  if (node.type !== 'BinaryExpression' || node.operator !== '+') return plainText(node);
  const [left, right] = [sumText(node.left), sumText(node.right)];
  return left === undefined || right === undefined ? undefined : left + right;
}
