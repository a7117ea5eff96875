import type { ToRaise } from './raise-to-steps.ts';

/**
 * The same question as an integer programme in the LP text format that solvers commonly read, so
 * that anybody can have the answer confirmed by a program that shares nothing with ours. A binary
 * variable for every member and mark, a chain that reaches lower marks before higher ones, one row
 * for the pool. Its optimum is `goals * weight + worth`, the weight being in the first line.
 */
export function raiseProgramme({ pool, members, steps }: ToRaise): string {
  const all = steps.reduce((sum, step) => sum + step.worth, 0) * members.length;
  const weight = all + 1;
  const objective: string[] = [];
  const costs: string[] = [];
  const chains: string[] = [];
  const binaries: string[] = [];
  for (const [at, { height, goal }] of members.entries()) {
    const marks = [
      ...new Set([...steps.map((step) => step.height), ...(goal === undefined ? [] : [goal])]),
    ];
    let before: { readonly name: string; readonly mark: number } | undefined;
    for (const mark of marks.sort((a, b) => a - b)) {
      const name = `x${at}_${mark}`;
      const worth = steps.reduce((sum, step) => sum + (step.height === mark ? step.worth : 0), 0);
      objective.push(`${worth + (goal === mark ? weight : 0)} ${name}`);
      costs.push(
        `${Math.max(0, mark - height) - Math.max(0, (before?.mark ?? 0) - height)} ${name}`,
      );
      if (before !== undefined) chains.push(`${before.name} - ${name} >= 0`);
      binaries.push(name);
      before = { name, mark };
    }
  }
  return [
    `\\ optimum = goals * ${weight} + worth`,
    'Maximize',
    ` obj: ${sumOf(objective)}`,
    'Subject To',
    ` pool: ${sumOf(costs)} <= ${pool}`,
    ...chains.map((chain, at) => ` c${at}: ${chain}`),
    'Binary',
    ...binaries.map((name) => ` ${name}`),
    'End',
    '',
  ].join('\n');
}

/** Terms in lines short enough for every reader of the format. */
function sumOf(terms: readonly string[]): string {
  if (terms.length === 0) return '0 none';
  return terms.reduce(
    (text, term, at) => text + (at === 0 ? '' : at % 8 === 0 ? '\n + ' : ' + ') + term,
    '',
  );
}
