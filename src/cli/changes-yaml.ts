import type { Change, Content } from '../sense/soldered.ts';

/** A step with its changes as it stands in a study, two spaces in, ready to be pasted under `steps:`. */
export function writeChanges(id: string, title: string, changes: readonly Change[]): string {
  const lines = [`  - id: ${id}`, `    title: ${scalar(title)}`];
  if (changes.length > 0) lines.push('    changes:');
  for (const { at, becomes, why } of changes) {
    lines.push(`      - at: ${at}`, `        why: ${scalar(why)}`);
    if (becomes) lines.push('        becomes:', ...fields(becomes, ' '.repeat(10)));
    else lines.push('        removed: true');
  }
  return lines.join('\n');
}

function fields(content: Content, indent: string): string[] {
  return Object.entries(content).map(([field, value]) =>
    typeof value === 'string'
      ? `${indent}${field}: ${scalar(value)}`
      : `${indent}${field}: { ${Object.entries(value)
          .map(([key, inner]) => `${key}: ${scalar(String(inner))}`)
          .join(', ')} }`,
  );
}

/** Plain where YAML reads it back as it is, else quoted. */
function scalar(text: string): string {
  return /^[\p{L}\d][^:#[\]{}"`\n]*$/u.test(text) &&
    !/^(true|false|null|yes|no|on|off|~)$/i.test(text) &&
    text.trim() === text
    ? text
    : JSON.stringify(text);
}
