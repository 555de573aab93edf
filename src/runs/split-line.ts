/** Splits one line at the delimiter, quotes respected. */
export function splitLine(line: string, delimiter: string): string[] {
  if (!line.includes('"')) return line.split(delimiter);
  const fields: string[] = [];
  let field = '';
  let inside = false;
  for (let i = 0; i < line.length; i++) {
    const c = line[i];
    if (inside && c === '"' && line[i + 1] === '"') {
      field += '"';
      i++;
    } else if (c === '"') inside = !inside;
    else if (c === delimiter && !inside) {
      fields.push(field);
      field = '';
    } else field += c;
  }
  fields.push(field);
  return fields;
}
