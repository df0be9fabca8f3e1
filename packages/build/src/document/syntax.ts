import type { Fault } from '../fault.ts';

/** Nesting beyond this is refused: no build needs it, and it would exhaust the stack. */
export const DEEPEST = 100;

const SPACE = /[ \t\r\n]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.+-])/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
const WORD = /(?:true|false|null)(?!\w)/y;

type Expect = 'value' | 'value or ]' | 'key' | 'key or }' | 'colon' | ', or }' | ', or ]' | 'end';

const ACCEPTED: Record<Expect, string> = {
  value: 'A value: a string in double quotes, a number, true, false, null, [ or {.',
  'value or ]': 'A value, or ] to close the list.',
  key: 'A key in double quotes, such as "teeth".',
  'key or }': 'A key in double quotes, such as "teeth", or } to close the object.',
  colon: 'A colon between the key and its value, such as "teeth": 17.',
  ', or }': 'A comma before the next key, or } to close the object.',
  ', or ]': 'A comma before the next item, or ] to close the list.',
  end: 'Nothing more: the file holds one object.',
};

/** Line and column, both from 1, of an offset in a text. */
export function lineAndColumn(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset);
  const start = before.lastIndexOf('\n') + 1;
  return { line: before.split('\n').length, column: offset - start + 1 };
}

/** The first breach of JSON's grammar (RFC 8259) in a text, as a fault that says what was expected; undefined if none. */
export function syntaxFault(text: string): Fault | undefined {
  if (/^[ \t\r\n]*$/.test(text)) {
    return {
      code: 'json.empty',
      address: '',
      line: 1,
      column: 1,
      problem: 'The file is empty.',
      read: '',
      accepted: 'A build file: one JSON object, such as { "format": 4 }.',
    };
  }
  const open: ('{' | '[')[] = [];
  let expect: Expect = 'value';
  let at = skip(SPACE, text, 0);
  const fault = (code: string, problem: string, accepted: string): Fault => ({
    code,
    address: '',
    ...lineAndColumn(text, at),
    problem,
    read: excerpt(text, at),
    accepted,
  });
  const afterValue = (): Expect => {
    const last = open.at(-1);
    return last === undefined ? 'end' : last === '{' ? ', or }' : ', or ]';
  };
  while (at < text.length) {
    const char = text[at];
    const wantsValue: boolean = expect === 'value' || expect === 'value or ]';
    const wantsKey: boolean = expect === 'key' || expect === 'key or }';
    let end = at + 1;
    if (wantsValue && (char === '{' || char === '[')) {
      open.push(char);
      if (open.length > DEEPEST) {
        return fault('json.too-deep', 'The file is nested too deep.', `At most ${DEEPEST} levels of { and [.`);
      }
      expect = char === '{' ? 'key or }' : 'value or ]';
    } else if (
      (char === '}' && (expect === 'key or }' || expect === ', or }')) ||
      (char === ']' && (expect === 'value or ]' || expect === ', or ]'))
    ) {
      open.pop();
      expect = afterValue();
    } else if (char === ',' && (expect === ', or }' || expect === ', or ]')) {
      expect = expect === ', or }' ? 'key' : 'value';
    } else if (char === ':' && expect === 'colon') {
      expect = 'value';
    } else if (char === '"' && (wantsKey || wantsValue)) {
      const string = scanString(text, at);
      if ('fault' in string) return string.fault;
      end = string.end;
      expect = wantsKey ? 'colon' : afterValue();
    } else {
      if (wantsValue) end = Math.max(skip(NUMBER, text, at), skip(WORD, text, at));
      if (!wantsValue || end === at) {
        return fault('json.syntax', 'This is not JSON here.', ACCEPTED[expect]);
      }
      expect = afterValue();
    }
    at = skip(SPACE, text, end);
  }
  return expect === 'end' ? undefined : fault('json.syntax', 'The file ends too early.', ACCEPTED[expect]);
}

/** Steps over a string that begins at `start`, or says what is wrong in it: an escape, a control character, no end. */
function scanString(text: string, start: number): { end: number } | { fault: Fault } {
  let at = start + 1;
  let code = text.charCodeAt(at);
  while (code >= 0x20) {
    if (code === 0x22) return { end: at + 1 };
    if (code === 0x5c) {
      ESCAPE.lastIndex = at;
      if (!ESCAPE.test(text)) {
        return stringFault(
          text,
          at,
          'an escape that JSON does not know',
          'One of \\" \\\\ \\/ \\b \\f \\n \\r \\t \\u0041.',
        );
      }
      at = ESCAPE.lastIndex;
    } else {
      at += 1;
    }
    code = text.charCodeAt(at);
  }
  if (at >= text.length || code === 0x0a || code === 0x0d) {
    const accepted = 'A double quote at the end of the string, such as "17 teeth".';
    return stringFault(text, start, 'no closing double quote on its line', accepted);
  }
  const accepted = 'A tab or other control character written as an escape, such as \\t.';
  return stringFault(text, at, 'a control character in it', accepted);
}

function stringFault(text: string, at: number, has: string, accepted: string): { fault: Fault } {
  const problem = `The string has ${has}.`;
  return {
    fault: { code: 'json.syntax', address: '', ...lineAndColumn(text, at), problem, read: excerpt(text, at), accepted },
  };
}

function skip(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

/** The word or sign at a place, short enough for a message. */
function excerpt(text: string, at: number): string {
  if (at >= text.length) return 'the end of the file';
  return /^(?:[\w.+-]+|"[^"\r\n]*"?|[\s\S]?)/u.exec(text.slice(at, at + 40))?.[0] ?? '';
}
