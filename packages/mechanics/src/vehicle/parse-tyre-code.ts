/** How a tyre code is written. */
export type TyreSystem = 'metric' | 'inch' | 'alphanumeric' | 'flotation' | 'ISO 5775';

export type TyreConstruction = 'radial' | 'cross-ply' | 'bias-belted';

/** What a tyre code says, SI. */
export interface TyreSize {
  readonly ok: true;
  readonly system: TyreSystem;
  /** m */
  readonly sectionWidth: number;
  /** Section height over section width. */
  readonly aspect: number;
  /** m */
  readonly rimDiameter: number;
  readonly construction: TyreConstruction;
  /** Load index of a single tyre. */
  readonly loadIndex: number | null;
  readonly speedSymbol: string | null;
  /** What the code leaves open and is taken from practice, in sentences. */
  readonly assumed: readonly string[];
}

/** Why a tyre code cannot be read. */
export interface TyreFault {
  readonly ok: false;
  readonly read: string;
  readonly problem: string;
  readonly accepted: string;
}

/** Section widths behind the letters of alphanumeric codes, m, by letters: rows of the table of width letters. */
export type AlphaWidths = Readonly<Record<string, number>>;

const INCH = 0.0254;
const MM = 0.001;

const ACCEPTED =
  'a metric size such as 120/70ZR17, 205/55R16 91V or 110/85R36, a motorcycle inch size such as 3.50-18 or 4.25/85-18, ' +
  'an alphanumeric size such as MT90B16, a flotation size such as 31x10.50R15, or a cycle size such as 37-622';

const MEASURE = 'Measure the roll-out of the loaded wheel instead, and enter that.';

/** Passenger sizes that print no aspect ratio are of the 80 to 82 series. */
const UNPRINTED_ASPECT = 0.82;

/** Structure between aspect ratio and rim: a speed letter may stand before it. */
const STRUCTURE = '(-|[A-Z]?[RBD]-?)';

type Parts = readonly string[];
type Core = Omit<TyreSize, 'ok' | 'loadIndex' | 'speedSymbol'>;
/** A reader gives the size, or the problem in words. */
type Reader = readonly [pattern: RegExp, read: (parts: Parts, widths: AlphaWidths) => Core | string];

const number = (text: string | undefined): number => Number.parseFloat(text ?? '');

function constructionOf(structure: string): TyreConstruction {
  if (structure.includes('R')) return 'radial';
  return structure.includes('B') ? 'bias-belted' : 'cross-ply';
}

function limits(name: string, value: number, low: number, high: number, unit: string): string | undefined {
  return value >= low && value <= high
    ? undefined
    : `The ${name} of ${value}${unit} is not between ${low} and ${high}${unit}.`;
}

const rimProblem = (rim: number): string | undefined => limits('rim diameter', rim, 4, 54, ' in');

function metric([width, aspect, structure = '', rim]: Parts): Core | string {
  const [w, a, d] = [number(width), number(aspect), number(rim)];
  const wrong = limits('section width', w, 50, 900, ' mm') ?? limits('aspect ratio', a, 20, 110, ' %') ?? rimProblem(d);
  if (wrong !== undefined) return wrong;
  return {
    system: 'metric',
    sectionWidth: w * MM,
    aspect: a / 100,
    rimDiameter: d * INCH,
    construction: constructionOf(structure),
    assumed: [],
  };
}

function metricUnprinted([width, structure = '', rim]: Parts): Core | string {
  const [w, d] = [number(width), number(rim)];
  const wrong = limits('section width', w, 125, 335, ' mm') ?? rimProblem(d);
  if (wrong !== undefined) return wrong;
  return {
    system: 'metric',
    sectionWidth: w * MM,
    aspect: UNPRINTED_ASPECT,
    rimDiameter: d * INCH,
    construction: constructionOf(structure),
    assumed: ['The aspect ratio is not printed; 82 % is taken, as passenger sizes without one have.'],
  };
}

function inch([width = '', aspect, structure = '', rim]: Parts): Core | string {
  const [w, d] = [number(width), number(rim)];
  const [, decimals = ''] = width.split('.');
  if (decimals.length < 2 || w > 5.2 || d > 23)
    return `${width}-${rim ?? ''} is an agricultural or lorry size in inches: its diameter stands in tables only, no rule gives it. ${MEASURE}`;
  const wrong = limits('section width', w, 1.75, 5.2, ' in') ?? limits('rim diameter', d, 8, 23, ' in');
  if (wrong !== undefined) return wrong;
  const base = {
    system: 'inch',
    sectionWidth: w * INCH,
    rimDiameter: d * INCH,
    construction: constructionOf(structure),
  } as const;
  const larger =
    'Motorcycle tyres in inch sizes measure about 2 % more than their nominal diameter: a measured roll-out is better.';
  if (aspect !== undefined) {
    const a = number(aspect);
    return limits('aspect ratio', a, 50, 110, ' %') ?? { ...base, aspect: a / 100, assumed: [larger] };
  }
  if (/^(?:00|25|50|75)$/.test(decimals))
    return {
      ...base,
      aspect: 1,
      assumed: ['The section is taken as high as it is wide: standard inch series.', larger],
    };
  if (/^[16]0$/.test(decimals))
    return { ...base, aspect: 0.9, assumed: ['The aspect ratio is taken as 90 %: low-profile inch series.', larger] };
  return `The width ${width} in belongs to no known series of inch sizes without a printed aspect ratio.`;
}

function alphanumeric([letters = '', aspect, structure = '', rim]: Parts, widths: AlphaWidths): Core | string {
  const width = Object.hasOwn(widths, letters) ? widths[letters] : undefined;
  if (width === undefined)
    return `The width letters ${letters} are not known; known are ${Object.keys(widths).join(', ')}.`;
  const [a, d] = [number(aspect), number(rim)];
  const wrong = limits('aspect ratio', a, 20, 110, ' %') ?? rimProblem(d);
  if (wrong !== undefined) return wrong;
  return {
    system: 'alphanumeric',
    sectionWidth: width,
    aspect: a / 100,
    rimDiameter: d * INCH,
    construction: constructionOf(structure),
    assumed: [`The letters ${letters} stand for a metric equivalent, which is not an identity.`],
  };
}

function flotation([outside, width, structure = '', rim]: Parts): Core | string {
  const [od, w, d] = [number(outside), number(width), number(rim)];
  const wrong =
    limits('outside diameter', od, 10, 90, ' in') ?? limits('section width', w, 3, 60, ' in') ?? rimProblem(d);
  if (wrong !== undefined) return wrong;
  if (od <= d) return `The outside diameter of ${od} in is not larger than the rim of ${d} in.`;
  return {
    system: 'flotation',
    sectionWidth: w * INCH,
    aspect: (od - d) / 2 / w,
    rimDiameter: d * INCH,
    construction: constructionOf(structure),
    assumed: [],
  };
}

function cycle([width, bead]: Parts): Core | string {
  const [w, d] = [number(width), number(bead)];
  const wrong = limits('section width', w, 18, 120, ' mm') ?? limits('bead seat diameter', d, 137, 787, ' mm');
  if (wrong !== undefined) return wrong;
  return {
    system: 'ISO 5775',
    sectionWidth: w * MM,
    aspect: 1,
    rimDiameter: d * MM,
    construction: 'cross-ply',
    assumed: ['The section is taken as high as it is wide.'],
  };
}

const READERS: readonly Reader[] = [
  [new RegExp(`^(?:LT|ST|P)?(\\d{2,3})/(\\d{2,3}) ?${STRUCTURE} ?(\\d{1,2}(?:\\.5)?)(?!\\d)`), metric],
  [/^(\d{2,3})-(\d{3})(?!\d)/, cycle],
  [new RegExp(`^(\\d{3}) ?${STRUCTURE} ?(\\d{1,2})(?!\\d)`), metricUnprinted],
  [new RegExp(`^(\\d{1,2}(?:\\.\\d{1,2})?)(?:/(\\d{2,3}))? ?${STRUCTURE} ?(\\d{1,2})(?!\\d)`), inch],
  [new RegExp(`^(M[A-Z]) ?(\\d{2}) ?${STRUCTURE} ?(\\d{1,2})(?!\\d)`), alphanumeric],
  [new RegExp(`^(\\d{2}(?:\\.\\d{1,2})?)X(\\d{1,2}(?:\\.\\d{1,2})?) ?${STRUCTURE} ?(\\d{1,2})(?!\\d)`), flotation],
];

/** Marks that follow a size without being part of it. */
const MARKS =
  /^(?:M\/C|TUBELESS|TUBE TYPE|TL|TT|REINFORCED|REINF\.?|XL|EXTRA LOAD|LT|NHS|\d{1,2} ?PR|FRONT|REAR|\([WY]\)|M\+S|DOT)(?![A-Z])/;
/** Load index, alone or single and twin, with its speed symbol; in brackets with Y or W above the highest symbol. */
const SERVICE = /^\(?(\d{2,3})(?:\/\d{2,3})? ?([A-Z]\d?)\)?(?![A-Z0-9])/;

interface Service {
  loadIndex: number | null;
  speedSymbol: string | null;
}

/** Reads what follows the size; gives the characters that cannot be understood, or an empty text. */
function readService(rest: string, into: Service): string {
  let left = rest.trim();
  while (left !== '') {
    const mark = MARKS.exec(left);
    const service = mark ? null : SERVICE.exec(left);
    const found = mark ?? service;
    if (!found) return left;
    if (service && into.loadIndex === null) {
      into.loadIndex = Number(service[1]);
      into.speedSymbol = service[2] ?? null;
    }
    left = left.slice(found[0].length).replace(/^[\s,;/]+/, '');
  }
  return '';
}

/**
 * Reads a tyre size as moulded on the wall.
 *
 * Read are metric sizes (with or without aspect ratio), motorcycle inch sizes (standard and low profile), alphanumeric motorcycle
 * sizes, flotation sizes and ISO 5775 cycle sizes, each with load index, speed symbol and usual marks behind. Agricultural and
 * lorry sizes in inches are refused: only tables give their diameter.
 *
 * Sources: a tyre maker's page on motorcycle sidewall markings (inch series, read); UN Regulations No. 30, 75, 106, ISO 5775,
 * Tire and Rim Association flotation sizes (from memory).
 *
 * @param text the code; small letters, spaces and a decimal comma are accepted
 * @param widths section widths behind the letters of alphanumeric sizes, m
 * @returns the size in SI, or a fault that says what was read and what is accepted; never throws
 */
export function parseTyreCode(text: string, widths: AlphaWidths): TyreSize | TyreFault {
  const code = text
    .trim()
    .toUpperCase()
    .replace(/[‐‑–—−]/g, '-')
    .replace(/[×✕*]/g, 'X')
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/\s+/g, ' ')
    .replace(/ ?([/X-]) ?(?=[\d-])/g, '$1');
  const fault = (problem: string): TyreFault => ({ ok: false, read: text, problem, accepted: ACCEPTED });
  if (code === '') return fault('There is no tyre size here.');
  for (const [pattern, read] of READERS) {
    const match = pattern.exec(code);
    if (!match) continue;
    const core = read(match.slice(1), widths);
    if (typeof core === 'string') return fault(core);
    const service: Service = { loadIndex: null, speedSymbol: null };
    const left = readService(code.slice(match[0].length), service);
    if (left !== '') return fault(`“${left}” after the size is not understood.`);
    return { ok: true, ...core, ...service };
  }
  return fault(
    /^\d{2,3}\/\d{2,3} ?\d{1,2}/.test(code)
      ? 'The letter or dash between aspect ratio and rim diameter is missing.'
      : 'This is not a tyre size of a known kind.',
  );
}
