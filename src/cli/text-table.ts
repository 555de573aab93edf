/** A column of a text table: its heading, and on which side its cells line up. */
export interface TextColumn {
  readonly heading: string;
  readonly align?: 'left' | 'right';
}

/** Rows of cells as aligned text, two spaces between the columns; no trailing spaces. */
export function writeTable(columns: readonly TextColumn[], rows: readonly (readonly string[])[], indent = ''): string {
  const widths = columns.map(({ heading }, c) => Math.max(...[heading, ...rows.map((row) => row[c])].map(widthOf)));
  const line = (cells: readonly string[]) =>
    indent +
    cells
      .map((cell, c) => {
        const space = ' '.repeat(widths[c] - widthOf(cell));
        return columns[c].align === 'right' ? space + cell : cell + space;
      })
      .join('  ')
      .trimEnd();
  return [line(columns.map(({ heading }) => heading)), ...rows.map(line)].join('\n');
}

/** Characters as a terminal counts them: code points. */
function widthOf(text: string): number {
  return [...text].length;
}
