import { clutchSlipEnergy } from '@oddwheel/mechanics/vehicle/clutch-slip-energy';
import { frontLift } from '@oddwheel/mechanics/vehicle/front-lift';
import { gripLimit } from '@oddwheel/mechanics/vehicle/grip-limit';
import { sidewaysLimit } from '@oddwheel/mechanics/vehicle/sideways-limit';
import { speedometerCorrection } from '@oddwheel/mechanics/vehicle/speedometer-correction';
import { formatQuantity } from '@oddwheel/quantity/format';
import { standOf } from '../road/ground.ts';
import { named } from './brief.ts';
import { type Check, oneSubject } from './check.ts';
import { measured } from './measured.ts';
import { BALANCE_ORIGINS, balanceUses, firstPull, notRun } from './road-targets.ts';

const VEHICLE = '/brief/vehicle';
const vehicle = oneSubject(VEHICLE, 'Vehicle');
const g = (parts: number): string => `${formatQuantity(parts, 'number', '', { digits: 2 })} g`;

/** First gear against the tyre: more pull than grip is no fault, but the rest of it only spins the wheel. */
export const grip: Check = {
  id: 'road.grip',
  title: 'pull of first gear against grip',
  consequence: 'misses a target',
  wanted: { reserve: 1, from: 'common practice: pull beyond the grip only spins the wheel' },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: vehicle,
  run: (scene) => {
    const found = scene.road.grip();
    const drive = scene.road.drive();
    if (!found.ok || !drive.ok) {
      const missing = [...(found.ok ? [] : found.missing), ...(drive.ok ? [] : drive.missing)];
      if (missing.length > 0) return { kind: 'unknown', missing };
      return notRun(found.ok ? { ok: false, missing, says: drive.ok ? '' : drive.says } : found, (why) => why, []);
    }
    const pull = firstPull(scene);
    if (!pull) return null;
    const { force, governs } = found.output;
    const ends = governs === 'grip' ? 'the tyre slips' : 'the front lifts';
    const surplus = pull.force > force;
    return measured(
      { name: 'first gear at peak torque', value: pull.force, kind: 'force', use: 'force' },
      { name: 'passed on', value: force, kind: 'force', use: 'force' },
      () =>
        `On the level ${ends} at ${scene.show('force', force)}, and first gear at peak torque pulls ${scene.show('force', pull.force)}${surplus ? ': ease the throttle, or gear it higher' : ''}.`,
      named(...balanceUses(scene.model), scene.model.wheel.rollOut, scene.model.engine.boxEfficiency),
      () => [...pull.used(), { method: gripLimit, input: found.input, output: found.output, origins: BALANCE_ORIGINS }],
      { capacity: 'above', demand: 'above' },
    );
  },
};

/** The tyre slips, or the engine runs out of pull, before the front lifts. */
export const lift: Check = {
  id: 'road.lift',
  title: 'front lifting under pull',
  consequence: 'loses braking',
  wanted: { reserve: 1, from: 'common practice: the tyre shall slip before the front lifts' },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: (model) =>
    model.vehicle.contact === null || standOf(model.vehicle.contact).driven === 'rear' ? vehicle(model) : [],
  run: (scene) => {
    const found = scene.road.lift();
    const slip = scene.road.grip();
    if (!found) return null;
    if (!found.ok) return notRun(found, (why) => why, balanceUses(scene.model));
    if (!slip.ok) return notRun(slip, (why) => why, balanceUses(scene.model));
    const pull = firstPull(scene);
    const { liftForce } = found.output;
    const slips = slip.output.governs === 'grip' ? slip.output.slipForce : Number.POSITIVE_INFINITY;
    const engineFirst = pull !== null && pull.force <= slips;
    const most = engineFirst ? pull.force : slips;
    if (!Number.isFinite(most))
      return {
        kind: 'unknown',
        missing: scene.road.drive().ok ? [] : [{ address: '/brief/engine/curve', says: 'the torque curve' }],
      };
    const before = engineFirst ? 'first gear at peak torque pulls' : 'the tyre slips at';
    return measured(
      {
        name: engineFirst ? 'first gear at peak torque' : 'the tyre slips at',
        value: most,
        kind: 'force',
        use: 'force',
      },
      { name: 'lifts the front', value: liftForce, kind: 'force', use: 'force' },
      () =>
        `A pull of ${scene.show('force', liftForce)} lifts the front on the level; ${before} ${scene.show('force', most)}${liftForce < most ? ', so the front comes up under full throttle: carry the load further forward or lower' : ''}.`,
      balanceUses(scene.model),
      () => [
        ...(engineFirst ? pull.used() : []),
        { method: gripLimit, input: slip.input, output: slip.output, origins: BALANCE_ORIGINS },
        { method: frontLift, input: found.input, output: found.output, origins: BALANCE_ORIGINS },
      ],
      { capacity: 'above', demand: 'above' },
    );
  },
};

/** In a turn the tyres slide before a wheel lifts. */
export const tip: Check = {
  id: 'road.tip',
  title: 'tipping in a turn',
  consequence: 'loses braking',
  wanted: { reserve: 1, from: 'common practice: the tyres shall slide before a wheel lifts' },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: (model) => (model.vehicle.track ? oneSubject(`${VEHICLE}/track`, 'Vehicle')(model) : []),
  run: (scene) => {
    const found = scene.road.sideways();
    const { friction, track } = scene.model.vehicle;
    if (!found) return null;
    if (!found.ok) return notRun(found, (why) => why, balanceUses(scene.model));
    const { parts } = found.output;
    const slides = scene.at(friction);
    return measured(
      { name: 'the tyres slide at', value: slides, kind: 'number', use: 'number' },
      { name: 'a wheel lifts at', value: parts, kind: 'number', use: 'number' },
      () =>
        `In a turn a wheel lifts at ${g(parts)} sideways, and the tyres slide at ${g(slides)}${parts < slides ? ': it tips before it slides, so slow down for turns' : ''}. Braking or speeding up in the turn brings it earlier.`,
      named(...balanceUses(scene.model), track),
      () => [
        {
          method: sidewaysLimit,
          input: found.input,
          output: found.output,
          origins: {
            wheels: `${VEHICLE}/contact`,
            wheelbase: `${VEHICLE}/wheelbase`,
            track: `${VEHICLE}/track`,
            fromSingle: BALANCE_ORIGINS.aheadOfRear,
            height: BALANCE_ORIGINS.height,
          },
        },
      ],
      { capacity: 'above', demand: friction.address },
    );
  },
};

/** Heat in the clutch in one start, against the vehicle that the clutch was made for. */
export const clutch: Check = {
  id: 'road.clutch',
  title: 'heat in the clutch in a start',
  consequence: 'wears out',
  wanted: { reserve: 1, from: 'common practice: no more heat in a start than where the clutch was made for' },
  atWorst: 'thin',
  perCase: false,
  onRoad: true,
  subjects: (model) => (model.reference ? oneSubject('/brief/reference', 'Clutch')(model) : []),
  run: (scene) => {
    const { reference, engine, vehicle: of, wheel } = scene.model;
    const found = scene.road.clutch();
    if (!found || !reference) return null;
    const uses = named(
      ...[reference.overall[0] ?? null, reference.rollOut, reference.mass, engine.launch, engine.primary],
      ...[engine.gears[0] ?? null, wheel.rollOut, of.mass, of.payload, of.rolling, of.wheelInertia, of.otherInertia],
    );
    if (!found.ok) return notRun(found, (why) => why, uses);
    const { energy, referenceEnergy, energyRatio, time } = found.output;
    const kJ = (si: number) => formatQuantity(si, 'energy', 'kJ', { digits: 3 });
    return measured(
      { name: 'here', value: energy, kind: 'energy', use: 'energy' },
      { name: `in ${reference.name}`, value: referenceEnergy, kind: 'energy', use: 'energy' },
      () =>
        `One level start puts ${kJ(energy)} into the clutch within ${formatQuantity(time, 'time', 's', { digits: 2 })}, ${formatQuantity(energyRatio, 'number', '', { digits: 3 })} times that of ${reference.name}, ${kJ(referenceEnergy)}.`,
      uses,
      () => [
        {
          method: clutchSlipEnergy,
          input: found.input,
          output: found.output,
          origins: {
            engineSpeed: '/brief/engine/launch',
            torque: '/brief/engine/curve',
            efficiency: 'product of all efficiencies from crank to wheel',
            ratio: 'product of primary, first gear and stages',
            rollingRadius: '/brief/wheel/rollOut over 2 π',
            mass: `${BALANCE_ORIGINS.mass}, and the wheels`,
            load: of.rolling.address,
            referenceRatio: '/brief/reference/overall/0',
            referenceRadius: '/brief/reference/rollOut over 2 π',
            referenceMass: '/brief/reference/mass',
            referenceLoad: of.rolling.address,
          },
        },
      ],
      { capacity: 'above', demand: 'above' },
    );
  },
};

/** The speedometer never shows less than the true speed, nor too much more. */
export const speedometer: Check = {
  id: 'road.speedometer',
  title: 'reading of the speedometer',
  consequence: 'misses a target',
  wanted: { reserve: 1, from: 'UN Regulation No. 39, paragraph 5 (from memory); local rules decide' },
  atWorst: 'fails',
  perCase: false,
  onRoad: true,
  subjects: (model) => (model.speedometer ? oneSubject('/brief/speedometer', 'Speedometer')(model) : []),
  run: (scene) => {
    const meter = scene.model.speedometer;
    const found = scene.road.speedometer();
    if (!meter || !found) return null;
    if (!found.ok) return notRun(found, (why) => why, []);
    const { indicated } = found.input;
    const { speed, mostIndicated, factor } = found.output;
    const show = (si: number) => scene.show('speed', si);
    // The nearer limit is the one that can be broken.
    const little = indicated * indicated < speed * mostIndicated;
    const shown = { name: 'shown', value: indicated, kind: 'speed', use: 'speed' } as const;
    const limit = {
      name: little ? 'true speed' : 'most that may be shown',
      value: little ? speed : mostIndicated,
      kind: 'speed',
      use: 'speed',
    } as const;
    const wrong = indicated < speed || indicated > mostIndicated;
    const fix = ` Its drive put right would turn ${formatQuantity(factor, 'number', '', { digits: 3 })} times as fast.`;
    return measured(
      little ? limit : shown,
      little ? shown : limit,
      () =>
        `At ${show(indicated)} on the dial it truly runs ${show(speed)}; ${show(speed)} to ${show(mostIndicated)} may be shown.${wrong ? fix : ''}`,
      named(meter.madeRatio, meter.madeRollOut, scene.model.wheel.rollOut, scene.model.targets.cruiseSpeed),
      () => [
        {
          method: speedometerCorrection,
          input: found.input,
          output: found.output,
          origins: {
            indicated: scene.model.targets.cruiseSpeed?.address ?? 'a usual speed',
            designRatio: meter.madeRatio.address,
            designRollOut: meter.madeRollOut.address,
            ratio: meter.senses === 'driven wheel' ? 'it senses the wheel itself' : 'product of the stages',
            rollOut: '/brief/wheel/rollOut',
          },
        },
      ],
      { capacity: little ? 'the dial' : 'above', demand: little ? 'above' : 'the dial' },
    );
  },
};
