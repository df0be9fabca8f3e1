import { FIRST_STEP, type StepId, stepOf } from '../steps/steps.ts';

/** Where the page looks, as it stands after "#" in its address: a step, an element of the build, and a finding opened on it. */
export interface Look {
  readonly step: StepId;
  /** Address of the element in the inspector; null for none chosen. */
  readonly element: string | null;
  readonly finding: string | null;
}

/** Reads the part of the page's address after "#". */
export function readLook(hash: string): Look {
  const [place = '', query = ''] = hash.replace(/^#/, '').split('?');
  const finding = new URLSearchParams(query).get('finding');
  // An element's address begins with a slash; what stands before it is the step.
  const cut = place.indexOf('/');
  const step = stepOf(cut < 0 ? place : place.slice(0, cut))?.id ?? FIRST_STEP;
  return { step, element: cut < 0 ? null : decode(place.slice(cut)), finding };
}

/** Writes the part of the page's address after "#". */
export function writeLook(look: Look): string {
  if (look.element === null) return `#${look.step}`;
  const query = look.finding === null ? '' : `?${new URLSearchParams({ finding: look.finding })}`;
  return `#${look.step}${encodeURI(look.element).replaceAll('?', '%3F').replaceAll('#', '%23')}${query}`;
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** The longest of the known addresses that holds an address, itself included; null when none does. */
export function ownerOf(address: string, known: readonly string[]): string | null {
  const holders = known.filter((one) => address === one || address.startsWith(`${one}/`));
  return holders.reduce<string | null>((best, one) => (best === null || one.length > best.length ? one : best), null);
}
