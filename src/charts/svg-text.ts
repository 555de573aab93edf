/** Text that came from a file, as text inside SVG: never as markup. Characters that XML can't hold are left out. */
export function escapeText(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

type Attributes = Readonly<Record<string, string | number>>;

/** One SVG element with its attributes escaped; `content` is SVG already. Lengths are rounded to a hundredth of a pixel. */
export function element(name: string, attributes: Attributes, content = ''): string {
  const written = Object.entries(attributes).map(([key, value]) => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`${name} ${key} is ${value}`);
    return ` ${key}="${typeof value === 'number' ? Math.round(value * 100) / 100 : escapeText(value)}"`;
  });
  return content === '' ? `<${name}${written.join('')}/>` : `<${name}${written.join('')}>${content}</${name}>`;
}

/** A text element; `words` is plain text. */
export function textElement(words: string, attributes: Attributes): string {
  return element('text', attributes, escapeText(words) || ' ');
}
