/** Rows as columns of plain text: words to the left, figures to the right, two spaces between. */
export function textTable(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  figures: ReadonlySet<number>,
): string {
  const all = [heads, ...rows];
  const widths = heads.map((_, column) =>
    Math.max(...all.map((row) => [...(row[column] ?? '')].length)),
  );
  const line = (row: readonly string[]) =>
    widths
      .map((width, column) => padded(row[column] ?? '', width, figures.has(column)))
      .join('  ')
      .trimEnd();
  return `${all.map(line).join('\n')}\n`;
}

function padded(text: string, width: number, isFigure: boolean): string {
  const space = ' '.repeat(Math.max(0, width - [...text].length));
  return isFigure ? space + text : text + space;
}
