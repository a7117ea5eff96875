import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ESTree, parseSync, Visitor, type VisitorObject } from 'vite';

/** The repository's own files, read and parsed once for all checks on them. */
export const HOME = join(import.meta.dirname, '..', '..');

const SOURCES = '{src,simulation,scenarios,checks,bench,tools}/**/*.{ts,tsx,mts,css,sh}';
const BESIDE = ['*.ts', 'cratebook', '.ci/run'];

export interface SourceFile {
  /** From the top of the repository, with `/`. */
  readonly path: string;
  readonly text: string;
  readonly lines: readonly string[];
}

/** A function with the line it starts on and how many lines it has. */
export interface FunctionSize {
  readonly name: string;
  readonly line: number;
  readonly lines: number;
}

export function sourceFiles(): SourceFile[] {
  const paths = globSync([SOURCES, ...BESIDE], { cwd: HOME }).sort();
  return paths.map((path) => sourceFile(path, readFileSync(join(HOME, path), 'utf8')));
}

export function sourceFile(path: string, text: string): SourceFile {
  return { path, text, lines: text.split('\n') };
}

export function isScript({ path }: SourceFile): boolean {
  return /\.(?:ts|tsx|mts)$/.test(path);
}

/** Tests, and what only tests use: their size is that of their examples. */
export function isTest({ path }: SourceFile): boolean {
  return /\.(?:test|suite)\.tsx?$/.test(path) || path.startsWith('checks/');
}

/** The text with comments blanked out, line breaks kept. */
export function withoutComments(file: SourceFile): string {
  let { text } = file;
  for (const { start, end } of parseSync(file.path, file.text).comments) {
    const blank = file.text.slice(start, end).replace(/[^\n]/g, ' ');
    text = text.slice(0, start) + blank + text.slice(end);
  }
  return text;
}

/** Visits the syntax tree, with the line of each node at hand. */
export function visit(file: SourceFile, visitor: VisitorObject): void {
  new Visitor(visitor).visit(parseSync(file.path, file.text).program);
}

export function lineAt(file: SourceFile, offset: number): number {
  return file.text.slice(0, offset).split('\n').length;
}

type FunctionNode = ESTree.Function | ESTree.ArrowFunctionExpression;

export function functionSizes(file: SourceFile): FunctionSize[] {
  const found: FunctionSize[] = [];
  const keep = (node: FunctionNode): void => {
    const line = lineAt(file, node.start);
    const name = ('id' in node && node.id?.name) || file.lines[line - 1]?.trim() || 'function';
    found.push({ name, line, lines: lineAt(file, node.end) - line + 1 });
  };
  visit(file, {
    FunctionDeclaration: keep,
    FunctionExpression: keep,
    ArrowFunctionExpression: keep,
  });
  return found;
}
