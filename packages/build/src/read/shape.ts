import type { z } from 'zod';
import type { Fault } from '../fault.ts';
import { buildFile } from '../schema/build-file.ts';
import { branchFor, changedShape, nodeAt, pointerKey, type SchemaNode, valueAt } from '../schema/describe.ts';

const show = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
};

const TYPE_WORDS: Record<string, string> = {
  string: 'text in quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a group of named values { }',
  record: 'a group of named values { }',
  array: 'a list [ ]',
  tuple: 'a list [ ]',
};

const words = (items: readonly unknown[]): string => items.map((item) => JSON.stringify(item)).join(', ');

function accepted(node: SchemaNode | undefined, fallback: string): string {
  if (!node) return fallback;
  const facts = node['x-field'];
  if (node.enum) return `One of ${words(node.enum)}.`;
  if (facts?.example !== undefined) {
    const example = node.type === 'string' ? JSON.stringify(facts.example) : facts.example;
    return `${facts.name}, for example ${example}.`;
  }
  if (facts) return fallback === '' ? `${facts.name}.` : `${facts.name}: ${fallback}`;
  return fallback;
}

/** Keys that one object of the build accepts, spelled as a list. */
function keysOf(node: SchemaNode | undefined): string {
  return node?.properties ? Object.keys(node.properties).join(', ') : 'names of your own';
}

type Issue = z.core.$ZodIssue;

function toFaults(root: unknown, issue: Issue): Fault[] {
  const address = issue.path.map((key) => `/${pointerKey(String(key))}`).join('');
  const value = valueAt(root, address);
  const node = nodeAt(root, address);
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({
        code: 'shape.unknown-key',
        address: `${address}/${pointerKey(key)}`,
        problem: `The key "${key}" is not known here.`,
        read: show(valueAt(root, `${address}/${pointerKey(key)}`)),
        accepted: `Keys known here: ${keysOf(node)}.`,
      }));
    case 'invalid_type':
      if (value === undefined)
        return [
          {
            code: 'shape.missing',
            address,
            problem: `"${String(issue.path.at(-1) ?? '')}" is missing.`,
            read: 'nothing',
            accepted: accepted(node, TYPE_WORDS[issue.expected] ?? issue.expected),
          },
        ];
      return [
        {
          code: 'shape.type',
          address,
          problem: `Here stands ${Array.isArray(value) ? 'a list' : value === null ? 'null' : `a ${typeof value}`}, but ${TYPE_WORDS[issue.expected] ?? issue.expected} is wanted.`,
          read: show(value),
          accepted: accepted(node, TYPE_WORDS[issue.expected] ?? issue.expected),
        },
      ];
    case 'invalid_union': {
      const kinds = unionKinds(root, address);
      return [
        {
          code: 'shape.kind',
          address: `${address}/kind`,
          problem: 'The kind is missing or not known.',
          read: show(valueAt(root, `${address}/kind`)),
          accepted: `One of ${words(kinds)}.`,
        },
      ];
    }
    case 'invalid_value':
      return [
        {
          code: 'shape.choice',
          address,
          problem:
            value === undefined
              ? `"${String(issue.path.at(-1) ?? '')}" is missing.`
              : 'This word is not one of the choices.',
          read: show(value),
          accepted: `One of ${words(issue.values)}.`,
        },
      ];
    case 'invalid_key':
      return [
        {
          code: 'shape.id',
          address,
          problem: `"${String(issue.path.at(-1) ?? '')}" cannot be an id.`,
          read: String(issue.path.at(-1) ?? ''),
          accepted: 'Small letters, digits and single hyphens, a letter first, for example "chain-1".',
        },
      ];
    case 'too_small':
    case 'too_big': {
      const least = issue.code === 'too_small';
      const limit = least ? issue.minimum : issue.maximum;
      const what = issue.origin === 'array' ? ' entries' : issue.origin === 'string' ? ' characters' : '';
      return [
        {
          code: 'shape.limit',
          address,
          problem: least ? 'Too small or too few.' : 'Too large or too many.',
          read: show(value),
          accepted:
            `${least ? 'At least' : 'At most'} ${String(limit)}${limit === 1 ? what.replace('entries', 'entry').replace(/s$/, '') : what}. ${accepted(node, '')}`.trim(),
        },
      ];
    }
    default:
      return [
        {
          code: 'shape.other',
          address,
          problem: issue.message,
          read: show(value),
          accepted: accepted(node, 'see the schema'),
        },
      ];
  }
}

function unionKinds(root: unknown, address: string): unknown[] {
  const parent = nodeAt(root, address);
  const branches = parent?.oneOf ?? parent?.anyOf ?? [];
  return branches.flatMap((branch) => {
    const kind = branchFor(branch, undefined)?.properties?.kind;
    const words: readonly unknown[] = kind?.enum ?? (kind?.const === undefined ? [] : [kind.const]);
    return words;
  });
}

/**
 * First pass: keys, types, choices and counts. Gives every fault, in the order of the file.
 * @param before a value without faults; parts that it has in common with `value` are not looked at again
 */
export function shapeFaults(value: unknown, before?: unknown): Fault[] {
  const result = buildFile.safeParse(changedShape(value, before));
  return result.success ? [] : result.error.issues.flatMap((issue) => toFaults(value, issue));
}
