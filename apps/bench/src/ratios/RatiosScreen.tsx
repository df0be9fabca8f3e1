import type { JSX } from 'react';
import { PartList, ReferenceTable } from '../findings/Lists.tsx';
import { StepFindings } from '../findings/StepFindings.tsx';
import { cursorSpeed } from '../slider/scale.ts';
import type { ScreenProps } from '../steps/screen.ts';
import { isNotKnown, type PullLimit, pullLimits } from './curves.ts';
import { GearPlot } from './GearPlot.tsx';
import { GearTable } from './GearTable.tsx';
import { NotYet } from './NotYet.tsx';
import { PowerTable } from './PowerTable.tsx';
import { PullPlot } from './PullPlot.tsx';
import './ratios.css';
import { RoadPanel } from './RoadPanel.tsx';
import { RunPlot } from './RunPlot.tsx';
import { TrainsPanels } from './TrainsPanel.tsx';
import { useRoadCurves } from './use-curves.ts';
import { useSame } from './use-same.ts';

const NO_LIMITS: readonly PullLimit[] = [];
const NO_SPRINT = { missing: [], says: '' } as const;

/** Heights of the plots, px. */
const TALL = 340;
const LOW = 280;

/** What the reduction does: pull against road load, speed in gears, speeding up, power along the path, and the road in numbers. */
export function RatiosScreen({ state, actions, model }: ScreenProps): JSX.Element | null {
  const { assessment, hash, asked, mode } = state;
  const { curves, trouble } = useRoadCurves(model, hash);
  const limits = useSame(assessment ? pullLimits(assessment.road) : NO_LIMITS);
  const sprint = useSame(assessment?.road.sprint ?? NO_SPRINT);
  if (!assessment) return null;
  const { road, gears, units, path, findings } = assessment;
  const now = asked ?? assessment.here;
  const { gear } = now;
  const speed = cursorSpeed(
    gears.find((span) => span.id === gear),
    now.roadSpeed,
  );
  const known = curves === null || isNotKnown(curves) ? null : curves;
  const shop = mode === 'shop';
  return (
    <>
      <section className="ratios" aria-labelledby="ratios-heading">
        <h2 id="ratios-heading">Ratios</h2>
        {trouble !== null && <p className="fails">The curves could not be drawn: {trouble}</p>}
        {curves !== null && isNotKnown(curves) && (
          <p>
            <NotYet why={curves} onReveal={actions.reveal} />
          </p>
        )}
        {known && (
          <>
            <PullPlot
              curves={known}
              limits={limits}
              gear={gear}
              speed={speed}
              pull={path.at(-1)?.here.force ?? null}
              units={units}
              shop={shop}
              height={TALL}
            />
            <div className="ratios-pair">
              <GearPlot
                curves={known}
                gear={gear}
                speed={speed}
                engine={path[0]?.here.angularSpeed ?? null}
                units={units}
                shop={shop}
                height={LOW}
              />
              <RunPlot
                run={known.run}
                sprint={sprint}
                speed={speed}
                units={units}
                shop={shop}
                height={LOW}
                onReveal={actions.reveal}
              />
            </div>
          </>
        )}
      </section>
      <TrainsPanels model={model} actions={actions} hash={hash} units={units} shop={shop} />
      <PowerTable
        path={path}
        curves={known}
        gear={assessment.here.gear}
        speed={assessment.here.roadSpeed}
        units={units}
        onSelect={actions.select}
      />
      {known && <GearTable gears={gears} curves={known} pulls={road.pulls} gear={gear} speed={speed} units={units} />}
      <ReferenceTable rows={assessment.reference} units={units} />
      <RoadPanel road={road} findings={findings} units={units} onOpen={actions.openFinding} onReveal={actions.reveal} />
      <div className="ratios-targets">
        <StepFindings state={state} actions={actions} step="ratios" heading="Targets" />
      </div>
      <PartList parts={assessment.parts} />
    </>
  );
}
