import type { Model } from '../../model/model.ts';
import { type Within, within } from '../../model/within.ts';
import { printer } from '../scene.ts';
import { partsOf } from './parts.ts';
import { entryPlan, type Judged, slidePlan } from './plan.ts';
import { assemblySteps, loopService, partService } from './steps.ts';
import type { Assembly, Service, ShaftAssembly } from './types.ts';

type Plans = Within<Map<string, Judged>>;

const WHOLE: Plans = new WeakMap();
const SLIDING: Plans = new WeakMap();

/** A plan of a shaft, worked out once for its parts; its words are in the unit of the build. */
function planOnce(known: Plans, model: Model, index: number, plan: typeof slidePlan): Judged {
  const parts = partsOf(model, index);
  const plans = within(known, [parts], () => new Map<string, Judged>());
  const unit = model.units.length;
  const found = plans.get(unit) ?? plan(parts, printer(model));
  plans.set(unit, found);
  return found;
}

/** The way a shaft goes together, welded plates and all. */
export function wholePlan(model: Model, index: number): Judged {
  const welded = partsOf(model, index).some(({ opening }) => opening);
  return welded ? planOnce(WHOLE, model, index, entryPlan) : slidingPlan(model, index);
}

/** The way every part slides to its seat, welded plates aside. */
export function slidingPlan(model: Model, index: number): Judged {
  return planOnce(SLIDING, model, index, slidePlan);
}

/** Shafts that the builder puts together: the engine's output comes as it is. */
function shaftAssemblies(model: Model, wholes: readonly Judged[]): ShaftAssembly[] {
  return model.shafts.flatMap((shaft, index): ShaftAssembly[] => {
    const whole = wholes[index];
    if (index === 0 || !whole) return [];
    const { plan, verdict } = whole;
    return [
      {
        address: shaft.address,
        name: shaft.name,
        steps: verdict.is === 'yes' ? assemblySteps(model, index, partsOf(model, index), plan) : [],
        missing: verdict.is === 'open' ? verdict.missing : [],
      },
    ];
  });
}

const CHANGED = { sprocket: 'sprocket', pulley: 'sprocket', bearing: 'bearing' } as const;

function computed(model: Model): Assembly {
  const show = printer(model);
  const wholes = model.shafts.map((_, index) => wholePlan(model, index));
  const ofParts = model.shafts.flatMap((shaft, index) =>
    partsOf(model, index).flatMap(({ seat }, at): Service[] => {
      const whole = wholes[index];
      const changes = seat.kind in CHANGED ? CHANGED[seat.kind as keyof typeof CHANGED] : null;
      // A bearing of the engine is the business of its own handbook.
      if (!whole || changes === null || seat.body === 'engine') return [];
      const service = partService(model, index, at, whole, show);
      return [{ address: seat.address, name: `${seat.name} on ${shaft.name}`, changes, ...service }];
    }),
  );
  const ofLoops = model.stages.flatMap((stage, index): Service[] =>
    stage.kind === 'chain' || stage.kind === 'belt'
      ? [
          {
            address: stage.address,
            name: stage.name,
            changes: 'chain',
            ...loopService(model, index, stage, wholes, show),
          },
        ]
      : [],
  );
  return { shafts: shaftAssemblies(model, wholes), services: [...ofParts, ...ofLoops] };
}

const known = new WeakMap<Model, Assembly>();

/** How the drive goes together and comes apart. Models do not change, so each is worked out once. */
export function assemblyOf(model: Model): Assembly {
  const found = known.get(model) ?? computed(model);
  known.set(model, found);
  return found;
}
