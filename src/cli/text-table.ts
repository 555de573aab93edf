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

const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Emoji_Presentation}\u3000-\u303f\uff01-\uff60]/u;
const unseen = /[\p{Mark}\p{Cf}]/u;

/** Columns that a terminal takes for a text: two for a wide character, none for a mark on the one before. */
function widthOf(text: string): number {
  return [...text].reduce((sum, character) => sum + (wide.test(character) ? 2 : unseen.test(character) ? 0 : 1), 0);
}

/** "1 step", "2 steps". */
export function plural(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}
