import { shaftEndurance } from '@oddwheel/mechanics/shaft/endurance';
import { formatQuantity } from '@oddwheel/quantity/format';
import { SHAFT_RELIABILITY } from '@oddwheel/tables/shaft-reliability';
import { SHAFT_STEELS } from '@oddwheel/tables/shaft-steels';
import { rowInSi } from '@oddwheel/tables/table';
import type { Shaft } from '../../model/model.ts';
import type { Loads } from '../../model/strength.ts';
import { type Within, within } from '../../model/within.ts';
import type { At, Used } from '../geometry/types.ts';
import { thinnestAt } from './diameters.ts';
import { type NotchFactors, notchFactors } from './notch-factors.ts';
import { notchesOf, type ShaftNotch, stepsOf } from './notches.ts';
import { type SectionForces, sectionAt } from './sections.ts';
import type { ShaftSolution, ShaftStructure } from './shaft-structure.ts';

/** A section of a shaft that is looked at: ends of its stretches, steps and notches. */
export interface Place {
  readonly name: string;
  readonly address: string;
  readonly station: number;
  readonly diameter: number;
  readonly bore: number;
  /** Which of the sections of a solution meet here. */
  readonly entries: readonly number[];
  /** Fatigue factors of the notch; 1 where there is none. */
  readonly bending: number;
  readonly torsion: number;
  readonly tensile: number;
  readonly yielding: number;
  /** Weld whose heat takes strength out of the steel here; null where it keeps its own. */
  readonly softenedBy: string | null;
  readonly endurance: number;
  readonly modulus: number;
  readonly area: number;
  /** Methods that gave the factors and the endurance limit, in order. */
  readonly used: readonly Used[];
  readonly origins: Readonly<Record<string, string>>;
}

const TOGETHER = 1e-7;
/** A weld takes the strength of drawing or hardening out of the steel this far. */
const SOFTENED = 0.025;
const SOFT = 'S355J2';

interface Strengths {
  readonly tensile: number;
  readonly yielding: number;
  readonly from: string;
}

/** Strength of a steel beside a weld: of the same steel as rolled, or of plain structural steel where it was hardened. */
function besideWeld(shaft: Shaft, own: Strengths): Strengths {
  const { key } = shaft.steel;
  if (key === null) return own;
  const rolled = key.replace('-cold-drawn', '-hot-rolled');
  const known = rolled !== key && Object.hasOwn(SHAFT_STEELS.rows, rolled);
  if (!known && !/tempered|normalized|DOM/.test(key)) return own;
  const row = known ? rolled : SOFT;
  const { tensile = own.tensile, yield: yielding = own.yielding } = rowInSi(SHAFT_STEELS, row);
  return {
    tensile: Math.min(own.tensile, tensile),
    yielding: Math.min(own.yielding, yielding),
    from: `shaft-steels/${row}`,
  };
}

const NO_NOTCH: NotchFactors = {
  bending: 1,
  torsion: 1,
  core: 1,
  used: [],
  origins: { notchBending: 'no notch here', notchTorsion: 'no notch here' },
};

const mm = (metres: number): string => formatQuantity(metres, 'length', 'mm');

const KNOWN = new WeakMap<ShaftStructure, { readonly reliability: string; readonly places: readonly Place[] }>();

/** Places of a shaft with what each can bear; worked out once for a structure, which holds for one corner of its inputs. */
export function placesOf(structure: ShaftStructure, at: At, { reliability }: Loads): readonly Place[] {
  const known = KNOWN.get(structure);
  if (known?.reliability === reliability) return known.places;
  const places = work(structure, at, reliability);
  KNOWN.set(structure, { reliability, places });
  return places;
}

function work(structure: ShaftStructure, at: At, reliability: Loads['reliability']): Place[] {
  const { shaft, stations } = structure;
  const stretches = structure.stretches.map((stretch) => ({
    ...stretch,
    diameter: stretch.strong ?? stretch.diameter,
  }));
  const notches = notchesOf(shaft);
  const welds = notches.filter(({ sort }) => sort === 'weld-toe');
  const own: Strengths = {
    tensile: at(shaft.steel.tensile),
    yielding: at(shaft.steel.yield),
    from: shaft.steel.tensile.address,
  };
  const soft = besideWeld(shaft, own);
  const factor = rowInSi(SHAFT_RELIABILITY, reliability).factor ?? Number.NaN;
  const limits = new Map<string, Used>();
  const enduranceOf = (diameter: number, strengths: Strengths, welded: boolean): Used => {
    const key = `${diameter} ${strengths.from} ${welded}`;
    const input = {
      tensile: strengths.tensile,
      diameter,
      // A weld's surface is as it came.
      surface: welded ? ('as forged' as const) : shaft.surface,
      turning: 'turns' as const,
      reliability: factor,
    };
    const found = limits.get(key) ?? {
      method: shaftEndurance,
      input,
      output: shaftEndurance.run(input),
      origins: {
        tensile: strengths.from,
        diameter: `${shaft.address}/pieces`,
        surface: welded ? 'a weld as it came' : `${shaft.address}/surface`,
        reliability: `shaft-reliability/${reliability}`,
      },
    };
    limits.set(key, found);
    return found;
  };
  const entriesAt = (station: number): number[] => {
    const node = stations.findIndex((one) => Math.abs(one - station) <= TOGETHER);
    if (node < 0) return [];
    return [2 * node - 1, 2 * node].filter((entry) => entry >= 0 && entry < 2 * (stations.length - 1));
  };
  const place = (
    name: string,
    address: string,
    station: number,
    size: { readonly diameter: number; readonly bore: number },
    entries: readonly number[],
    factorsOf: (tensile: number, from: string) => NotchFactors,
    welded: boolean,
  ): Place => {
    const weld = welds.find((one) => Math.abs(one.station - station) <= SOFTENED);
    const strengths = weld ? soft : own;
    const factors = factorsOf(strengths.tensile, strengths.from);
    const diameter = factors.core * size.diameter;
    const { bore } = size;
    const limit = enduranceOf(diameter, strengths, welded);
    return {
      name,
      address,
      station,
      diameter,
      bore,
      entries,
      bending: factors.bending,
      torsion: factors.torsion,
      tensile: strengths.tensile,
      yielding: strengths.yielding,
      softenedBy: weld && soft.from !== own.from ? weld.name : null,
      endurance: limit.output.limit as number,
      modulus: ((Math.PI * diameter ** 3) / 32) * (1 - (bore / diameter) ** 4),
      area: (Math.PI * (diameter ** 2 - bore ** 2)) / 4,
      used: [...factors.used, limit],
      origins: {
        ...factors.origins,
        diameter: address,
        tensile: strengths.from,
        yieldStrength: strengths.from,
        endurance: 'above',
      },
    };
  };
  const notched = (
    notch: ShaftNotch,
    large: number | null,
    size: { readonly diameter: number; readonly bore: number },
  ) =>
    place(
      notch.name,
      notch.address,
      notch.station,
      size,
      entriesAt(notch.station),
      (tensile, tensileFrom) =>
        notchFactors({
          notch,
          radius: notch.radius ? at(notch.radius) : null,
          diameter: size.diameter,
          large,
          tensile,
          tensileFrom,
        }),
      notch.sort === 'weld-toe',
    );
  const plain = stations.slice(1).flatMap((after, k): Place[] => {
    const before = stations[k] as number;
    const stretch = thinnestAt(stretches, (before + after) / 2);
    if (!stretch) return [];
    return [before, after].map((station, side) =>
      place(nameAt(shaft, station), stretch.address, station, stretch, [2 * k + side], () => NO_NOTCH, false),
    );
  });
  const stepped = stepsOf(stretches, notches, mm).map(({ notch, large, small, bore }) =>
    notched(notch, large, { diameter: small, bore }),
  );
  const others = notches
    .filter(({ sort }) => sort !== 'shoulder')
    .flatMap((notch) => {
      const stretch = thinnestAt(stretches, notch.station);
      if (!stretch) return [];
      const cut = notch.cutInto === null ? stretch : { ...stretch, diameter: notch.cutInto };
      return [notched(notch, null, cut)];
    });
  return [...stepped, ...others, ...plain].filter(
    ({ diameter, bore, entries }) => diameter > bore && entries.length > 0,
  );
}

/** What is at a station: the seat there, else the number. */
function nameAt(shaft: Shaft, station: number): string {
  const seat = shaft.seats.find((one) => Math.abs(one.station - station) <= TOGETHER);
  return seat ? seat.name : `station ${mm(station)}`;
}

/** Forces inside the shaft at one place. */
export interface AtPlace {
  readonly place: Place;
  readonly forces: SectionForces;
}

/**
 * The place where a number is greatest.
 * @param size what is compared, such as stress over strength; so many times as large when the forces are
 * @returns null where it is nowhere above zero
 */
export function greatestAt(places: readonly Place[], solution: ShaftSolution, size: Size): AtPlace | null {
  const { scaled } = solution;
  if (!scaled) return within(GREATEST, [solution, places, size], () => greatestAnew(places, solution, size));
  // All sizes that are compared grow with the loads, so the place is the same.
  const one = greatestAt(places, scaled.one, size);
  if (!one) return null;
  const { by } = scaled;
  const { station, bending, shear, torque, axial } = one.forces;
  const forces = { station, bending: by * bending, shear: by * shear, torque: by * torque, axial: by * axial };
  return { place: one.place, forces };
}

/** A number that is so many times as large when the forces are. */
type Size = (place: Place, forces: SectionForces) => number;

const GREATEST: Within<AtPlace | null> = new WeakMap();

function greatestAnew(places: readonly Place[], { sections }: ShaftSolution, size: Size): AtPlace | null {
  let most = 0;
  let found: AtPlace | null = null;
  for (const place of places)
    for (const entry of place.entries) {
      const forces = sectionAt(sections, entry);
      if (!forces) continue;
      const here = size(place, forces);
      if (here > most) {
        most = here;
        found = { place, forces };
      }
    }
  return found;
}

/** Equivalent stress over yield strength. */
export function yieldUse(place: Place, { bending, torque, axial }: SectionForces): number {
  const normal = bending / place.modulus + Math.abs(axial) / place.area;
  const shear = torque / (2 * place.modulus);
  return Math.sqrt(normal * normal + 3 * shear * shear) / place.yielding;
}

/** One over the reserve against fatigue of a shaft that turns under a load that stands still: bending swings, torque does not. */
export function fatigueUse(criterion: Loads['criterion']): Size {
  return FATIGUE[criterion];
}

const FATIGUE: Readonly<Record<Loads['criterion'], Size>> = {
  Goodman: fatigueBy('Goodman'),
  Gerber: fatigueBy('Gerber'),
  'ASME elliptic': fatigueBy('ASME elliptic'),
  Soderberg: fatigueBy('Soderberg'),
};

function fatigueBy(criterion: Loads['criterion']): Size {
  return (place, { bending, torque }) => {
    const a = (place.bending * bending) / place.modulus / place.endurance;
    const mean = (Math.sqrt(3) * place.torsion * Math.abs(torque)) / (2 * place.modulus);
    const [u, y] = [mean / place.tensile, mean / place.yielding];
    switch (criterion) {
      case 'Goodman':
        return a + u;
      case 'Gerber':
        return (a + Math.sqrt(a * a + 4 * u * u)) / 2;
      case 'ASME elliptic':
        return Math.sqrt(a * a + y * y);
      case 'Soderberg':
        return a + y;
    }
  };
}
