import { type Outcome, TWO } from './measure.ts';
import { levels } from './observe.ts';

/** Rates per sort and level as a table, then how the odds hold. */
export function report(all: readonly Outcome[]): string {
  const outcomes = all.filter(({ isShown }) => isShown);
  const sorts = [...new Set(outcomes.map(({ sort }) => sort))];
  const heads = levels.map((level) => `${level}: n first three`.padStart(28)).join('');
  const lines = [`${''.padEnd(38)}${heads}`];
  for (const sort of [...sorts, 'all']) {
    const cells = levels.map((level) => {
      const isOwn = (each: string) => (sort === 'all' ? each !== TWO : each === sort);
      const own = outcomes.filter((each) => each.level === level && isOwn(each.sort));
      return rates(own).padStart(28);
    });
    lines.push(`${sort.padEnd(38)}${cells.join('')}`);
  }
  return `${lines.join('\n')}\n\n${calibration(outcomes)}\n${unexplained(outcomes)}`;
}

function rates(outcomes: readonly Outcome[]): string {
  if (outcomes.length === 0) return '-';
  const first = outcomes.filter(({ place }) => place === 1).length;
  const three = outcomes.filter(({ place }) => place >= 1 && place <= 3).length;
  return `${outcomes.length} ${percent(first, outcomes.length)} ${percent(three, outcomes.length)}`;
}

/**
 * Of what is said first at such odds, how much is right. Explanations that come to the same
 * balances (either of two doubles removed) are one thing said.
 */
function calibration(outcomes: readonly Outcome[]): string {
  const bands = [0, 0.1, 0.3, 0.5, 0.7, 0.85, 0.95, 1.01];
  const lines = ['odds of what is said first, how often, mean odds, how often it is right'];
  const answered = outcomes.filter(({ explained }) => explained.explanations.length > 0);
  for (let at = 0; at + 1 < bands.length; at += 1) {
    const [from = 0, to = 1] = [bands[at], bands[at + 1]];
    const own = answered.filter(({ said }) => said >= from && said < to);
    if (own.length === 0) continue;
    const said = own.reduce((sum, each) => sum + each.said, 0);
    const right = own.filter(({ place }) => place === 1).length;
    const band = `${from.toFixed(2)}–${Math.min(1, to).toFixed(2)}`;
    const mean = `${((said / own.length) * 100).toFixed(1)} %`;
    lines.push(
      `${band}  ${String(own.length).padStart(6)}  ${mean}  ${percent(right, own.length)}`,
    );
  }
  return `${lines.join('\n')}\n`;
}

/**
 * How often nothing single is said, where one mistake was made and where two were that both show
 * in what was looked at; two that one record would put right (two debits missing, a stall that is
 * not settled and its cash) are one.
 */
function unexplained(outcomes: readonly Outcome[]): string {
  const told = levels.map((level) => {
    const at = outcomes.filter((each) => each.level === level);
    const said = (own: readonly Outcome[]) =>
      own.length === 0
        ? '-'
        : percent(own.filter(({ explained }) => explained.unexplained).length, own.length);
    const one = said(at.filter(({ sort }) => sort !== TWO));
    return `${level}: one mistake ${one}, two ${said(at.filter(isTrulyTwo))}`;
  });
  return `nothing single explains it, said of\n${told.join('\n')}\n`;
}

function isTrulyTwo({ sort, isShown, place, explained }: Outcome): boolean {
  const isOneAfterAll = place === 1 && explained.explanations[0]?.mistakes.length === 1;
  return sort === TWO && isShown && !isOneAfterAll;
}

function percent(part: number, all: number): string {
  return `${((100 * part) / all).toFixed(1)} %`;
}
