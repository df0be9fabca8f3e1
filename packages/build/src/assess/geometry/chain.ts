import { chordalVariation } from '@oddwheel/mechanics/chain/chordal-variation';
import { chainIdlerLength } from '@oddwheel/mechanics/chain/idler-length';
import { chainLength } from '@oddwheel/mechanics/chain/length';
import { sprocketDiameters } from '@oddwheel/mechanics/chain/sprocket-diameters';
import { MethodError } from '@oddwheel/mechanics/method/method';
import { dot } from '@oddwheel/mechanics/numerics/vector';
import type { Vec3 } from '@oddwheel/quantity/quantity';
import type { Shaft, Stage } from '../../model/model.ts';
import { bentActions, idlerGeometry, onTightSpan } from './idler.ts';
import { lineAngle, MOST_SKEW, onlyTorque, seatOf, turning } from './place.ts';
import { parallelPlace, tangentActions } from './tangent.ts';
import type { At, ChainGeometry, IdlerGeometry, StageGeometry, Used } from './types.ts';

type ChainStage = Extract<Stage, { readonly kind: 'chain' }>;

/** Slope of the line of centres against the ground plane. */
export function slopeOf(u: Vec3): number {
  return Math.atan2(Math.abs(u[2]), Math.hypot(u[0], u[1]));
}

export function chainGeometry(stage: ChainStage, from: Shaft, to: Shaft, at: At): StageGeometry {
  const [driver, driven] = [seatOf(from, stage.from), seatOf(to, stage.to)];
  const skew = lineAngle(from.direction, to.direction);
  const relation = skew > MOST_SKEW ? null : dot(from.direction, to.direction) >= 0 ? 1 : -1;
  const place = parallelPlace(driver.at, driven.at, from.direction);
  const base = {
    stage,
    from,
    to,
    ratio: stage.teeth.driven / stage.teeth.driver,
    efficiency: at(stage.efficiency),
    relation,
    skew,
    bevel: null,
    coupling: null,
  } as const;
  const trouble = (address: string, says: string): StageGeometry => ({
    ...base,
    trouble: [{ address, says }],
    actions: onlyTorque(from, to, relation),
    pitchRadiusDriver: null,
    chain: null,
    used: [],
  });
  if (relation === null) return trouble(`${to.address}/direction`, 'shafts that lie parallel, as a chain needs them');
  const { u } = place;
  if (u === null) return trouble(`${to.address}/origin`, 'two axes apart from each other');
  try {
    const plain = solve(stage, place.centreDistance, place.planeOffset, u, `${from.address} and ${to.address}`);
    const { idler } = stage;
    const over = idler && idlerGeometry(stage, idler, from, driver, place.centreDistance, u);
    const chain = over ? withIdler(plain.chain, over.geometry, stage) : plain.chain;
    const { pitchRadiusDriver, pitchRadiusDriven } = chain;
    return {
      ...base,
      trouble: [],
      actions: (sense) => ({
        ...(over && onTightSpan(over.geometry.span, u, turning(from, sense))
          ? bentActions(over, pitchRadiusDriver, pitchRadiusDriven)
          : tangentActions(u, turning(from, sense), chain.centreDistance, pitchRadiusDriver, pitchRadiusDriven)),
        forcesKnown: true,
      }),
      pitchRadiusDriver,
      chain,
      used: over ? [...plain.used, over.used] : plain.used,
    };
  } catch (error) {
    if (!(error instanceof MethodError)) throw error;
    if (stage.idler && error.method === chainIdlerLength.id)
      return trouble(`${stage.idler.address}/at`, `an idler that touches one span and nothing else (${error.message})`);
    return trouble(`${to.address}/origin`, `sprockets that clear each other (${error.message})`);
  }
}

/** The chain over its idler: one on the tight span leaves the other span to hang. */
function withIdler(chain: ChainGeometry, idler: IdlerGeometry, stage: ChainStage): ChainGeometry {
  const { driver, driven } = stage.teeth;
  const wraps = [idler.wrapDriver, idler.wrapDriven] as const;
  return {
    ...chain,
    linksNeeded: idler.links,
    span: stage.idler?.span === 'tight span' ? idler.spanOther : idler.spanLonger,
    wrapSmall: driver === driven ? Math.min(...wraps) : driver < driven ? wraps[0] : wraps[1],
    idler,
  };
}

function solve(
  stage: ChainStage,
  centreDistance: number,
  planeOffset: number,
  u: Vec3,
  where: string,
): { readonly chain: ChainGeometry; readonly used: readonly Used[] } {
  const { pitch, roller } = stage.size;
  const { driver: teethDriver, driven: teethDriven } = stage.teeth;
  const row = `chain-sizes/${stage.size.key}`;
  const teethAt = { teethDriver: `${stage.address}/teeth/driver`, teethDriven: `${stage.address}/teeth/driven` };
  const lengthIn = { pitch, teethDriver, teethDriven, centreDistance };
  const length = chainLength.run(lengthIn);
  const sprocket = (teeth: number, address: string): Used => {
    const input = { pitch, rollerDiameter: roller, teeth };
    return {
      method: sprocketDiameters,
      input,
      output: sprocketDiameters.run(input),
      origins: { pitch: row, rollerDiameter: row, teeth: address },
    };
  };
  const small = Math.min(teethDriver, teethDriven);
  const outer = (used: Used) => Number(used.output.outsideDiameter) / 2;
  const [driver, driven] = [sprocket(teethDriver, teethAt.teethDriver), sprocket(teethDriven, teethAt.teethDriven)];
  const chordal = chordalVariation.run({ pitch, teeth: small, angularSpeed: 0 });
  return {
    chain: {
      centreDistance,
      planeOffset,
      linksNeeded: length.links,
      span: length.span,
      wrapSmall: Math.min(length.wrapDriver, length.wrapDriven),
      pitchRadiusDriver: length.pitchRadiusDriver,
      pitchRadiusDriven: length.pitchRadiusDriven,
      slope: slopeOf(u),
      outsideDriver: outer(driver),
      outsideDriven: outer(driven),
      chordal: chordal.variation,
      u,
      idler: null,
    },
    used: [
      {
        method: chainLength,
        input: lengthIn,
        output: length,
        origins: { pitch: row, ...teethAt, centreDistance: `places of ${where}` },
      },
      driver,
      driven,
    ],
  };
}
