import { functionSizes, isScript, isTest, type SourceFile, visit } from './source-file.ts';

/** Counts that may only go down; ratchet.json holds the most there may be. */
export interface Counts {
  /** Lines of the longest function outside of tests. */
  readonly longestFunctionLines: number;
  /** Lines of the longest file outside of tests. */
  readonly longestFileLines: number;
  /** Functions of more than 40 lines. */
  readonly functionsOver40Lines: number;
  /** `as` that is not `as const`: places where the compiler is asked to believe. */
  readonly casts: number;
  /** `throw` outside of tests and of `start`, where a thrown stop ends a command. */
  readonly throws: number;
  /** `!` that says a value is there. */
  readonly nonNullAssertions: number;
  /** Comments that switch a lint rule off. */
  readonly lintExceptions: number;
}

export function countsOf(files: readonly SourceFile[]): Counts {
  const own = files.filter((file) => file.path.startsWith('src/') && isScript(file));
  const scripts = own.filter((file) => !isTest(file));
  const sizes = scripts.flatMap((file) => functionSizes(file).map(({ lines }) => lines));
  const syntax = { casts: 0, throws: 0, nonNullAssertions: 0 };
  for (const file of scripts) addSyntax(file, syntax);
  return {
    longestFunctionLines: Math.max(...sizes),
    longestFileLines: Math.max(...scripts.map((file) => file.lines.length - 1)),
    functionsOver40Lines: sizes.filter((lines) => lines > 40).length,
    ...syntax,
    lintExceptions: scripts.filter((file) => /biome-ignore|ts-expect-error/.test(file.text)).length,
  };
}

function addSyntax(
  file: SourceFile,
  counts: { casts: number; throws: number; nonNullAssertions: number },
): void {
  visit(file, {
    TSAsExpression: ({ typeAnnotation }) => {
      const isConst =
        typeAnnotation.type === 'TSTypeReference' &&
        typeAnnotation.typeName.type === 'Identifier' &&
        typeAnnotation.typeName.name === 'const';
      if (!isConst) counts.casts += 1;
    },
    ThrowStatement: () => {
      if (!file.path.startsWith('src/start/')) counts.throws += 1;
    },
    TSNonNullExpression: () => {
      counts.nonNullAssertions += 1;
    },
  });
}
