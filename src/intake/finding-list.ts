import type { Finding } from './finding.ts';

/** So many findings of each severity are kept; a file that is wrong throughout stays readable. */
export const FINDINGS_MAX = 1000;

/** Collects findings. Errors and warnings have room of their own, so neither hides the other. */
export class FindingList {
  readonly #errors: Finding[] = [];
  readonly #warnings: Finding[] = [];
  #omitted = 0;

  add(...findings: readonly Finding[]): void {
    for (const finding of findings) {
      const list = finding.severity === 'error' ? this.#errors : this.#warnings;
      if (list.length < FINDINGS_MAX) list.push(finding);
      else this.#omitted += 1;
    }
  }

  /** How many more there were than are kept. */
  get omitted(): number {
    return this.#omitted;
  }

  get hasErrors(): boolean {
    return this.#errors.length > 0;
  }

  /** All kept findings in the order of their lines; on one line, as they were found. */
  inOrder(): Finding[] {
    return [...this.#errors, ...this.#warnings].sort((a, b) => a.line - b.line);
  }
}
