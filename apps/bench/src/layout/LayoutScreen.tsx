import type { Assessment } from '@oddwheel/build/assess/types';
import { movesIn } from '@oddwheel/build/placing/snap';
import type { View, ViewId } from '@oddwheel/sheets/drawing';
import { type JSX, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { LayoutPanels } from '../layout-panels/LayoutPanels.tsx';
import { StandsOn } from '../start/StandsOn.tsx';
import { elementOf } from '../state/bench.ts';
import { keepChoice, keptChoice } from '../state/device.ts';
import type { ScreenProps } from '../steps/screen.ts';
import { type Shape, ShownAs } from '../turning/ShownAs.tsx';
import { TurnView } from '../turning/TurnView.tsx';
import { useSpaceParts } from '../turning/use-space-parts.ts';
import { UnderlayPanel } from '../underlay/UnderlayPanel.tsx';
import { useUnderlays } from '../underlay/use-underlays.ts';
import type { DrawingRequest } from '../worker/layout-api.ts';
import { ChosenPart } from './ChosenPart.tsx';
import { ClearanceList } from './ClearanceList.tsx';
import { DrawingTools } from './DrawingTools.tsx';
import { framed } from './frame.ts';
import { HoldChoice } from './HoldChoice.tsx';
import { LayoutDrawing } from './LayoutDrawing.tsx';
import './layout.css';
import './drawing.css';
import { MovePanel } from './MovePanel.tsx';
import { MoveReadout } from './MoveReadout.tsx';
import { clearMoved, moveDrawn } from './move-drawn.ts';
import { Positions } from './Positions.tsx';
import { placedAt } from './parts.ts';
import { saveSvg } from './save-svg.ts';
import { useDrawing } from './use-drawing.ts';
import { type Shifts, useMove } from './use-move.ts';
import { usePlacing } from './use-placing.ts';
import { useZoom } from './use-zoom.ts';

/** Why a part on a shaft has no handle in a view. */
const END_ON = 'Its shaft is seen end on in this view: choose another view to move it along its shaft.';
const DEGREE = Math.PI / 180;
/** Below this width one view fills the frame, px. */
const ONE_VIEW_BELOW = 700;
const SMALL_SCREEN = '(max-width: 899px)';
/** Height of the lettering on the screen, px: notes of the face, larger in the shop. */
const LETTERING = { desk: 13, shop: 15 } as const;
/** One view is at most so much of the window high. */
const MOST_OF_WINDOW = 0.75;
/** The picture in space leaves paper beside it by which a finger scrolls. */
const TURNED_OF_WINDOW = 0.62;
const NO_VIEWS: readonly View[] = [];
const NO_PICTURES: Assessment['pictures'] = [];
const FAULTY = 'The file has faults: no picture can be laid until they are mended.';

/** Where everything sits: the drawing to scale, in which things are moved; clearances smallest first; what follows from the layout. */
export function LayoutScreen({ state, actions, model }: ScreenProps): JSX.Element | null {
  const { assessment, hash, look, mode } = state;
  const [arm, setArm] = useState(0);
  const [picked, setPicked] = useState<{ readonly view: ViewId | null } | null>(null);
  const [projection, setProjection] = useState(
    keptChoice('projection') === 'first angle' ? ('first angle' as const) : ('third angle' as const),
  );
  const [chosen, setChosen] = useState<string | null>(look.element);
  const [active, setActive] = useState<ViewId>('from the left');
  const [shape, setShape] = useState<Shape>(keptChoice('layout shape') === 'turned' ? 'turned' : 'drawing');
  const turned = shape === 'turned';
  const frame = useRef<HTMLElement>(null);
  const sheet = useRef<SVGSVGElement>(null);
  const width = useWidth(frame);
  const { zoom, setZoom } = useZoom(frame);
  const stroke = assessment?.stroke ?? null;
  const angle = stroke === null ? 0 : arm * DEGREE;
  const view = picked ? picked.view : width < ONE_VIEW_BELOW ? 'from the left' : null;

  const height = view === null ? null : Math.round(MOST_OF_WINDOW * window.innerHeight);
  const request: DrawingRequest | null = useMemo(
    () =>
      width === 0 || turned
        ? null
        : {
            armAngle: angle,
            projection,
            frame: {
              view,
              width: width * zoom,
              height: height === null ? null : height * zoom,
              textHeight: LETTERING[mode],
            },
          },
    [width, zoom, angle, projection, view, height, mode, turned],
  );
  const { shown, trouble } = useDrawing(model, hash, request);
  const space = useSpaceParts(model, hash, turned ? angle : null);
  const shifts = useRef<Shifts | null>(null);
  const placing = usePlacing(model, hash);
  const placed = placing === null ? null : placedAt(placing.placed, chosen);
  const underlays = useUnderlays(assessment?.pictures ?? NO_PICTURES, actions.pictureUrl);
  const faulty = state.fileFaults.length > 0;
  const locked = faulty
    ? 'The file has faults: nothing can be moved until they are mended.'
    : angle === 0
      ? null
      : 'Put the arm back to where it is drawn to move parts: positions are those of the build as drawn.';
  const mover = useMove({
    model,
    actions,
    units: assessment?.units ?? {},
    placing,
    placed: locked === null ? placed : null,
    hash: (turned ? space.shown?.hash : shown?.hash) ?? '',
    shifts,
    inSpace: turned,
  });
  useEffect(() => {
    if (turned || !shown) return;
    shifts.current = {
      show: (by) => sheet.current && moveDrawn(sheet.current, shown.drawing.views, by),
      clear: () => sheet.current && clearMoved(sheet.current),
    };
  }, [turned, shown]);

  const choose = useCallback(
    (address: string, inView?: ViewId): void => {
      setChosen(address);
      if (inView !== undefined) setActive(inView);
      // On a small screen the inspector would take the whole page: there it is opened by its own link.
      if (!window.matchMedia(SMALL_SCREEN).matches) actions.select(elementOf(state, address) ?? address);
    },
    [actions, state],
  );
  // The choice follows the path and the inspector, but stays with a part of the element that it is on.
  const { element } = look;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another element in view changes the choice
  useEffect(() => {
    if (element !== null && (chosen === null || elementOf(state, chosen) !== element)) setChosen(element);
  }, [element]);

  // Kept through a drag, which draws anew what moves and nothing else.
  const below = useMemo(
    () =>
      state.assessment && (
        <>
          <StandsOn model={model} hash={state.hash} onReveal={actions.reveal} />
          <ClearanceList rows={state.assessment.clearance.rows} onSelect={actions.reveal} />
          <LayoutPanels state={state} actions={actions} armAngle={angle} />
        </>
      ),
    [state, actions, model, angle],
  );

  if (!assessment) return null;
  // A part on a shaft runs along it, so it is moved where the shaft is not seen end on.
  const inView = (shown?.drawing.views ?? []).filter(({ id }) => view === null || id === view);
  const movable = placed === null ? [] : inView.filter(({ right, up }) => movesIn(placed, right, up));
  const standing = movable.find(({ id }) => id === active) ?? movable[0] ?? null;
  const ends = stroke?.chains[0]?.places ?? [];
  const [low, high] = [ends[0]?.angle ?? 0, ends.at(-1)?.angle ?? 0];
  const laid =
    shown && width > 0
      ? framed(
          shown.drawing,
          shown.request.frame.view,
          { width, height: shown.request.frame.view === null ? null : height },
          zoom,
        )
      : null;
  return (
    <>
      <section className="layout-drawing" aria-labelledby="layout-heading">
        <h2 id="layout-heading">
          Layout <span className="lead">to scale, in {assessment.units.length ?? 'mm'}</span>
        </h2>
        <ShownAs
          shape={shape}
          onShape={(next) => {
            mover.cancel();
            keepChoice('layout shape', next);
            setShape(next);
          }}
        />
        {!turned && (
          <DrawingTools
            views={shown?.drawing.views ?? []}
            view={view}
            onView={(next) => setPicked({ view: next })}
            projection={projection}
            onProjection={(next) => {
              keepChoice('projection', next);
              setProjection(next);
            }}
            zoom={zoom}
            onZoom={setZoom}
          />
        )}
        <div className="drawing-tools">
          <ChosenPart
            placing={placing}
            views={turned ? NO_VIEWS : movable}
            chosen={chosen}
            active={standing?.id ?? active}
            onChoose={choose}
            onActive={setActive}
          />
          {mover.aids && mover.aids.held.length > 0 && (
            <HoldChoice aids={mover.aids} held={mover.held} onHold={mover.hold} />
          )}
        </div>
        {(turned ? space.trouble : trouble) !== null && (
          <p className="fails">The drawing could not be made: {turned ? space.trouble : trouble}</p>
        )}
        <section
          ref={frame}
          className={turned ? 'layout-turned' : zoom > 1 ? 'layout-views enlarged' : 'layout-views'}
          tabIndex={turned ? -1 : 0}
          aria-label={turned ? 'The build in space' : 'Drawing, scrolls when enlarged'}
        >
          {turned && space.shown && width > 0 && (
            <TurnView
              shown={space.shown}
              name={assessment.name}
              units={assessment.units}
              mode={mode}
              width={width}
              height={Math.round(Math.min(width, TURNED_OF_WINDOW * window.innerHeight))}
              chosen={chosen}
              placed={locked === null ? placed : null}
              mover={mover}
              shifts={shifts}
              onChoose={choose}
            />
          )}
          {!turned && shown && laid && (
            <LayoutDrawing
              shown={shown}
              laid={laid}
              name={assessment.name}
              chosen={chosen}
              placed={locked === null ? placed : null}
              mover={mover}
              handleIn={standing}
              sheet={sheet}
              frame={frame}
              pictures={underlays.laid}
              onChoose={choose}
            />
          )}
        </section>
        {mover.move && <MoveReadout move={mover.move} mover={mover} units={assessment.units} frame={frame} />}
        {!turned && underlays.laid.size > 0 && (
          <p className="note">
            A picture lies under the drawing: only what stands in the plane of its two points is to scale.
          </p>
        )}
        {!turned && (
          <button
            type="button"
            className="link"
            onClick={() => void saveSvg(model, { armAngle: angle, projection }, assessment.name)}
          >
            Save the drawing as SVG, 1 : 5
          </button>
        )}
        {high > low && (
          <label className="arm-angle">
            Swinging arm, {arm === 0 ? 'as drawn' : `${Math.abs(arm)}° ${arm > 0 ? 'up' : 'down'}`}
            <input
              type="range"
              min={Math.ceil(low / DEGREE)}
              max={Math.floor(high / DEGREE)}
              step={1}
              value={arm}
              onChange={(event) => setArm(Number(event.target.value))}
            />
          </label>
        )}
      </section>
      {placed && placing && (
        <section className="chosen-part" aria-label="The chosen part">
          <MovePanel
            placed={placed}
            mover={mover}
            locked={locked ?? (standing || turned ? null : END_ON)}
            onOpen={() => actions.reveal(placed.address)}
          />
          <Positions key={placed.address} placed={placed} placing={placing} actions={actions} disabled={faulty} />
        </section>
      )}
      {!turned && (
        <UnderlayPanel
          underlays={underlays}
          model={model}
          actions={actions}
          placing={placing}
          units={assessment.units}
          locked={faulty ? FAULTY : null}
          onView={(next) => setPicked({ view: next })}
        />
      )}
      {below}
    </>
  );
}

/** Width of an element on the screen, px. */
function useWidth(element: { readonly current: HTMLElement | null }): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const { current } = element;
    if (!current) return;
    const measure = (): void => setWidth(Math.floor(current.clientWidth));
    const watch = new ResizeObserver(measure);
    watch.observe(current);
    measure();
    return () => watch.disconnect();
  }, [element]);
  return width;
}
