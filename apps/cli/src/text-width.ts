/** Columns that text takes in a terminal. */

/** Scripts whose letters take two columns, and emoji. */
const WIDE =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}/u;
const NONE = /[\p{Mn}\p{Me}\p{Cf}]/u;

/** Columns of one line of text; marks that sit on a letter take none. */
export function textWidth(text: string): number {
  let width = 0;
  for (const char of text) width += NONE.test(char) ? 0 : WIDE.test(char) ? 2 : 1;
  return width;
}

/**
 * Text made safe for a terminal: control characters, which could move the cursor, become a visible sign, and the thin
 * spaces of numbers, which few terminal fonts have, become spaces that no line is broken at.
 */
export function plainLine(text: string): string {
  return text
    .replaceAll('\u2009', '\u00a0')
    .replace(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/gu, (char) => (char === '\n' || char === '\t' ? ' ' : '\ufffd'));
}

/** Breaks text at spaces into lines of at most `width` columns; a longer word is cut. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    while (textWidth(line) > width) {
      let head = '';
      for (const char of line) {
        if (head !== '' && textWidth(head + char) > width) break;
        head += char;
      }
      lines.push(head);
      line = line.slice(head.length);
    }
  }
  lines.push(line);
  return lines;
}
