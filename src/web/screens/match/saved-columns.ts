import type { ColumnsTyped } from './columns-form.tsx';

/** Columns of files as the user said them, kept in this browser by the heads of the table. */
const PREFIX = 'cratebook.columns.';

export function savedColumns(
  side: 'bank' | 'supplier',
  heads: readonly string[],
): ColumnsTyped | undefined {
  try {
    const saved: unknown = JSON.parse(localStorage.getItem(keyOf(side, heads)) ?? 'null');
    if (typeof saved !== 'object' || saved === null) return undefined;
    const texts = Object.entries(saved).filter(([, value]) => typeof value === 'string');
    return Object.fromEntries(texts);
  } catch {
    return undefined;
  }
}

export function saveColumns(
  side: 'bank' | 'supplier',
  heads: readonly string[],
  typed: ColumnsTyped,
): void {
  try {
    localStorage.setItem(keyOf(side, heads), JSON.stringify(typed));
  } catch {
    // A browser that keeps nothing asks again the next time.
  }
}

function keyOf(side: string, heads: readonly string[]): string {
  return `${PREFIX}${side}.${heads.join('|')}`;
}
