import type { ComponentChildren } from 'preact';
import { CopyButton } from './copy.tsx';
import { withMinus } from './words.ts';

export interface Column {
  readonly name: string;
  /** Figures line up on the right, words on the left. */
  readonly figure?: boolean;
}

export interface Row {
  readonly key: string;
  /** The first one is the row's heading; an empty one is left out where rows are stacked. */
  readonly cells: readonly ComponentChildren[];
  readonly chosen?: boolean;
  /** Left out on screen, but printed. */
  readonly folded?: boolean;
}

interface Shown {
  readonly name: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** The whole table as text for a spreadsheet. */
  readonly text: () => string;
  /** Beside the button that copies. */
  readonly children?: ComponentChildren;
}

/** A table that can be copied into a spreadsheet. Where it would be too wide, each row becomes a block whose cells carry the names of their columns. */
export function DataTable({ name, columns, rows, text, children }: Shown) {
  return (
    <div class="table">
      <table aria-label={name}>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column.name} scope="col" class={column.figure ? 'figure' : undefined}>
                {column.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells: [heading, ...cells], chosen, folded }) => (
            <tr key={key} class={chosen ? 'chosen' : undefined} hidden={folded}>
              <th scope="row">{heading}</th>
              {cells.map((cell, at) => {
                const { name: column, figure } = columns[at + 1]!;
                return (
                  <td key={column} data-column={column} class={figure ? 'figure' : undefined}>
                    {typeof cell === 'string' ? withMinus(cell) : cell}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      <div class="table-foot">
        {children}
        <CopyButton text={text} label={`Copy as text for a spreadsheet: ${name}`}>
          Copy as text
        </CopyButton>
      </div>
    </div>
  );
}
