/** A node of a small XML text. */
export interface XmlNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (XmlNode | string)[];
}

const ENTITIES: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"' };

function decode(text: string): string {
  if (/[<>]|&(?!(?:amp|lt|gt|quot);)/.test(text)) throw new Error(`"${text}" has a raw mark`);
  return text.replace(/&\w+;/g, (entity) => ENTITIES[entity] ?? entity);
}

/**
 * Reads one well-formed XML element without comments or instructions (XML 1.0, 5th edition, 2.1).
 * @throws Error where a tag is not closed in order, an attribute is not quoted or stands twice, or a mark is not escaped.
 */
export function readXml(text: string): XmlNode {
  const open: { tag: string; attributes: Record<string, string>; children: (XmlNode | string)[] }[] = [];
  let root: XmlNode | undefined;
  let at = 0;
  for (const found of text.matchAll(/<(\/?)([a-z]+)((?:\s+[A-Za-z:-]+="[^"<]*")*)\s*(\/?)>/g)) {
    const before = decode(text.slice(at, found.index));
    at = found.index + found[0].length;
    const parent = open.at(-1);
    if (before !== '') {
      if (parent === undefined) throw new Error(`"${before}" stands outside the element`);
      parent.children.push(before);
    }
    const [, closes, tag = '', attributeText = '', empty] = found;
    if (closes === '/') {
      const node = open.pop();
      if (node?.tag !== tag) throw new Error(`</${tag}> closes <${node?.tag}>`);
      const outer = open.at(-1);
      if (outer) outer.children.push(node);
      else root = node;
      continue;
    }
    if (root !== undefined) throw new Error('there are two elements');
    const attributes: Record<string, string> = {};
    for (const [, name = '', value = ''] of attributeText.matchAll(/([A-Za-z:-]+)="([^"]*)"/g)) {
      if (name in attributes) throw new Error(`"${name}" stands twice`);
      attributes[name] = decode(value);
    }
    const node = { tag, attributes, children: [] };
    if (empty === '/') parent?.children.push(node);
    else open.push(node);
  }
  if (at !== text.length) throw new Error(`"${text.slice(at)}" is left over`);
  if (root === undefined) throw new Error('the element is not closed');
  return root;
}

/** Counts of children that MathML Core wants of its elements. */
const CHILDREN: Readonly<Record<string, number>> = { mfrac: 2, msup: 2, msub: 2, mover: 2, munder: 2 };
const TOKENS = ['mi', 'mn', 'mo', 'mtext'];

/** Checks tags and counts of children (W3C MathML Core, section 3). */
export function checkMathML(node: XmlNode): void {
  const known = ['math', 'mrow', 'msqrt', 'mtable', 'mtr', 'mtd', ...Object.keys(CHILDREN), ...TOKENS];
  if (!known.includes(node.tag)) throw new Error(`<${node.tag}> is not expected`);
  const token = TOKENS.includes(node.tag);
  for (const child of node.children) {
    if ((typeof child === 'string') !== token) throw new Error(`<${node.tag}> holds ${JSON.stringify(child)}`);
    if (typeof child !== 'string') checkMathML(child);
  }
  const wanted = CHILDREN[node.tag];
  if (wanted !== undefined && node.children.length !== wanted)
    throw new Error(`<${node.tag}> has ${node.children.length} children, not ${wanted}`);
}

const SIGNS: Readonly<Record<string, string>> = { '\u2061': ' ', '\u2062': '·', '⋅': '·', '·': '⋅' };

/** MathML as the text that a reader sees, for reading back: rows show no brackets, fractions and exponents hold together by their place. */
export function seenText(node: XmlNode | string): string {
  if (typeof node === 'string') return node;
  const parts = node.children.map(seenText);
  const [first = '', second = ''] = parts;
  switch (node.tag) {
    case 'mfrac':
      return ` ((${first}) / (${second})) `;
    case 'msqrt':
      return ` √(${parts.join('')}) `;
    case 'msup':
      return first.trim() === 'e' ? ` exp(${second}) ` : `${first}^(${second})`;
    case 'msub': {
      const sub = second.replace(/\s/g, '');
      const [small, base] = ['₀₁₂₃₄₅₆₇₈₉', first.trim()];
      return ` ${base}${/^\d+$/.test(sub) ? sub.replace(/\d/g, (d) => small[Number(d)] ?? d) : `_${sub}`} `;
    }
    case 'mover':
    case 'munder':
      return first;
    case 'mo':
      return ` ${SIGNS[parts.join('')] ?? parts.join('')} `;
    case 'mtable':
      return `${parts.join(' ; ')} }`;
    case 'mi':
    case 'mn':
    case 'mtext':
      return ` ${parts.join('').replace('\u00a0', ' ')} `;
    default:
      return parts.join('');
  }
}
