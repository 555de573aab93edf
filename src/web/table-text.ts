/** A table as tab-separated text, which spreadsheets paste into cells. Tabs and line breaks inside a cell become spaces. */
export function tableText(head: readonly string[], rows: readonly (readonly string[])[]): string {
  return [head, ...rows].map((cells) => cells.map(cellText).join('\t')).join('\n');
}

/** A spreadsheet would run a cell that starts like a formula: the apostrophe keeps it text. Signed numbers stay numbers. */
function cellText(text: string): string {
  const line = text.replace(/[\t\r\n]+/g, ' ');
  return /^[=@]|^[+-](?![\d.])/.test(line) ? `'${line}` : line;
}
