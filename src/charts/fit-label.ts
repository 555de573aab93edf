/** Mean advance of a character in the usual text faces, as a share of the font size; on the wide side, so that labels rather end early. */
const ADVANCE = 0.61;

/** Estimated width of a label [px]: SVG text is laid out without a page to measure on. */
export function labelWidth(text: string, fontSize: number): number {
  return [...text].length * ADVANCE * fontSize;
}

/** The label, cut with an ellipsis where it would be wider than `width` [px]. */
export function fitLabel(text: string, fontSize: number, width: number): string {
  const characters = [...text];
  const room = Math.floor(width / (ADVANCE * fontSize));
  if (characters.length <= room) return text;
  return room < 2
    ? ''
    : `${characters
        .slice(0, room - 1)
        .join('')
        .trimEnd()}…`;
}

/** The label on one line, or on two where it is wider than `width` [px]; the second is cut with an ellipsis. Breaks between words where it can. */
export function wrapLabel(text: string, fontSize: number, width: number): readonly string[] {
  if (labelWidth(text, fontSize) <= width) return [text];
  const room = Math.max(1, Math.floor(width / (ADVANCE * fontSize)));
  const characters = [...text];
  const space = characters.slice(0, room + 1).lastIndexOf(' ');
  const end = space > 0 ? space : room;
  return [characters.slice(0, end).join(''), fitLabel(characters.slice(end).join('').trim(), fontSize, width)];
}
