import type { WorkingSymbol, WorkingValue } from '@oddwheel/mechanics/method/working';
import { DEFAULT_UNITS, formatQuantity, THIN_SPACE } from '@oddwheel/quantity/format';
import { type Kind, siUnit } from '@oddwheel/quantity/kinds';
import { unitOf } from '../numbers/shown.ts';

/** Unit in which a working shows a kind of quantity: the build's choice where there is one, else the SI unit. */
function unitOfKind(kind: Kind, units: Readonly<Record<string, string>>): string {
  switch (kind) {
    case 'length':
    case 'speed':
    case 'angularSpeed':
    case 'torque':
    case 'power':
    case 'force':
    case 'mass':
    case 'angle':
    case 'pressure':
      return unitOf(kind, units);
    case 'temperature':
    case 'stiffness':
      return DEFAULT_UNITS[kind];
    default:
      return siUnit(kind);
  }
}

/** The value of a symbol, and its unit apart from it; lists keep one unit for all entries. */
export function symbolValue(
  symbol: Pick<WorkingSymbol, 'value' | 'kind'>,
  units: Readonly<Record<string, string>>,
): { readonly number: string; readonly unit: string } {
  const { value } = symbol;
  // A count that is not rounded, such as the links a centre distance asks for, is a number like any other.
  const kind = symbol.kind === 'count' && !Number.isInteger(value) ? 'number' : symbol.kind;
  if (kind === null || typeof value === 'string') return { number: words(value), unit: '' };
  // Chain and line speeds are worked in m/s, as they are rated.
  const unit = kind === 'speed' ? 'm/s' : unitOfKind(kind, units);
  const one = (si: number): string => {
    const text = formatQuantity(si, kind, unit);
    const tail = [`${THIN_SPACE}${unit}`, unit].find((end) => end !== '' && text.endsWith(end)) ?? '';
    return text.slice(0, text.length - tail.length);
  };
  return { number: typeof value === 'number' ? one(value) : value.map(one).join(';\u2009'), unit };
}

const words = (value: WorkingValue): string => (typeof value === 'object' ? value.join('; ') : String(value));

/** Where a symbol's value came from, in words; an address of the build as its keys, without the maps that every address has. */
export function originWords(origin: string): string {
  if (!origin.startsWith('/')) return origin;
  const keys = origin
    .replace(/^\/(path\/(stages|shafts)|brief)\//, '/')
    .slice(1)
    .split('/');
  return keys.map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~').replaceAll('-', ' ')).join(', ');
}
