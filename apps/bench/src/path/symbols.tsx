import type { JSX } from 'react';
import type { DrawnStage } from './unroll.ts';

/** Kinematic symbols after ISO 3952, drawn by us: each about x = 0 of its column, in px, with y of the whole drawing. */

const MOST_RADIUS = 15;
const LEAST_RADIUS = 5;

/** Crank, rod and piston in their cylinder above the crankshaft. */
export function Crank({ y }: { y: number }): JSX.Element {
  return (
    <>
      <path className="thin-line" d={`M-10 ${y - 23}V${y - 42}H10V${y - 23}`} />
      <rect className="body" x="-7" y={y - 37} width="14" height="10" />
      <path className="link-line" d={`M0 ${y - 31}L6 ${y - 7}L0 ${y}`} />
      <circle className="travel" cx="0" cy={y} r="9" />
      <circle className="pin" cx="6" cy={y - 7} r="2.2" />
      <circle className="pin" cx="0" cy={y - 31} r="1.8" />
    </>
  );
}

/** Two faces on the shaft with the ground hatched behind them. */
export function Bearing({ x, y }: { x: number; y: number }): JSX.Element {
  return (
    <path
      className="thin-line"
      d={`M${x - 6} ${y - 5}h12M${x - 6} ${y + 5}h12m-11 4l3-4m1 4l3-4m1 4l3-4M${x - 5} ${y - 5}l3-4m1 4l3-4m1 4l3-4`}
    />
  );
}

/** The wheel edge-on, and the ground it stands on. */
export function Wheel({ y, radius }: { y: number; radius: number }): JSX.Element {
  const road = y + radius;
  return (
    <>
      <rect className="body heavy" x="-7" y={y - radius} width="14" height={2 * radius} rx="6" />
      <path className="thin-line" d={`M-7 ${y}h14`} />
      <path
        className="thin-line"
        d={`M-34 ${road}h68${[-28, -17, -6, 5, 16, 27].map((x) => `M${x} ${road}l-5 7`).join('')}`}
      />
    </>
  );
}

/** The symbol of a stage, from its input shaft on the left to its output shaft on the right. */
export function StageSymbol({ stage }: { stage: DrawnStage }): JSX.Element {
  switch (stage.symbol) {
    case 'chain':
    case 'belt':
      return <Strand stage={stage} toothed={stage.symbol === 'belt'} />;
    case 'spur':
      return <SpurPair stage={stage} />;
    case 'bevel':
      return <BevelPair stage={stage} />;
    case 'unit':
      return <Unit stage={stage} />;
    case 'coupling':
      return <Coupling stage={stage} />;
    case 'joint':
    case 'two joints':
      return <Joints stage={stage} />;
  }
}

/** Radii of the two wheels of a stage in their true ratio, as far as a small drawing can hold it. */
function radii(ratio: number): { readonly input: number; readonly output: number } {
  const held = (radius: number): number => Math.max(LEAST_RADIUS, radius);
  return ratio >= 1
    ? { input: held(MOST_RADIUS / ratio), output: MOST_RADIUS }
    : { input: MOST_RADIUS, output: held(MOST_RADIUS * ratio) };
}

/** Chain or belt edge-on between its two wheels: a chain in links, a belt whole with its flanges. */
function Strand({ stage, toothed }: { stage: DrawnStage; toothed: boolean }): JSX.Element {
  const { yIn, yOut } = stage;
  const { input, output } = radii(stage.ratio);
  const down = yOut >= yIn ? 1 : -1;
  const [start, end] = [yIn - down * input, yOut + down * output];
  const wheel = (y: number, r: number): string => `M-3.5 ${y - r}h7v${2 * r}h-7z`;
  const flanges = (y: number, r: number): string => `M-6 ${y - r - 2}v${2 * r + 4}M6 ${y - r - 2}v${2 * r + 4}`;
  return (
    <>
      <path className="body" d={wheel(yIn, input) + wheel(yOut, output)} />
      {toothed ? (
        <>
          <path className="belt" d={`M-3.5 ${start}V${end}h7V${start}z`} />
          <path className="thin-line" d={flanges(yIn, input) + flanges(yOut, output)} />
        </>
      ) : (
        <path className="chain-line" d={`M-5 ${start}V${end}M5 ${start}V${end}`} />
      )}
      <path className="thin-line" d={`M-3.5 ${yIn}h7M-3.5 ${yOut}h7`} />
    </>
  );
}

/** Two wheels edge-on that meet at their pitch line. */
function SpurPair({ stage }: { stage: DrawnStage }): JSX.Element {
  const { yIn, yOut, ratio } = stage;
  const between = Math.abs(yOut - yIn);
  const input = between * Math.min(0.78, Math.max(0.22, 1 / (1 + ratio)));
  const output = between - input;
  const wheel = (y: number, r: number): string => `M-4 ${y - r}h8v${2 * r}h-8z`;
  return (
    <>
      <path className="body" d={wheel(yIn, input) + wheel(yOut, output)} />
      <path className="thin-line" d={`M-4 ${yIn}h8M-4 ${yOut}h8`} />
    </>
  );
}

/** Two cones that meet at their apex; the output shaft leaves across and is turned into the plane of the drawing. */
function BevelPair({ stage }: { stage: DrawnStage }): JSX.Element {
  const { yIn, yOut } = stage;
  const way = yOut >= yIn ? 1 : -1;
  const room = Math.abs(yOut - yIn) - 6;
  const { input, output } = radii(stage.ratio);
  const scale = Math.min(1.35, room / input);
  const [pinion, gear] = [input * scale, output * scale];
  const apex = 0.6 * gear;
  const face = yIn + way * pinion;
  const corner = Math.min(8, Math.abs(yOut - face));
  return (
    <>
      <rect className="gap" x="-1" y={yOut - 4} width={apex + corner + 1} height="8" />
      <path
        className="shaft"
        d={`M${apex} ${face}V${yOut - way * corner}Q${apex} ${yOut} ${apex + corner} ${yOut}`}
        style={{ strokeWidth: stage.thicknessOut }}
      />
      <path
        className="body"
        d={`M${apex - gear} ${yIn - pinion}L0 ${yIn - 0.6 * pinion}V${yIn + 0.6 * pinion}L${apex - gear} ${yIn + pinion}z`}
      />
      <path
        className="body"
        d={`M${apex - gear} ${face}L${apex - 0.6 * gear} ${yIn + way * 0.6 * pinion}H${apex + 0.6 * gear}L${apex + gear} ${face}z`}
      />
    </>
  );
}

/** A bought-in unit: a box between its two shafts. */
function Unit({ stage }: { stage: DrawnStage }): JSX.Element {
  const { yIn, yOut } = stage;
  const top = Math.min(yIn, yOut) - 13;
  const height = Math.abs(yOut - yIn) + 26;
  return (
    <>
      <rect className="body heavy" x="-20" y={top} width="40" height={height} />
      <path
        className="thin-line"
        d={`M-20 ${yIn}H-8M8 ${yOut}H20M-8 ${yIn - 4}v8M8 ${yOut - 4}v8M-8 ${yIn}L8 ${yOut}`}
        strokeDasharray="3 2"
      />
    </>
  );
}

/** Two flanges face to face. */
function Coupling({ stage }: { stage: DrawnStage }): JSX.Element {
  const { yIn: y } = stage;
  return (
    <>
      <rect className="gap" x="-3" y={y - 5} width="6" height="10" />
      <path className="flange" d={`M-3 ${y - 10}v20M3 ${y - 10}v20`} />
    </>
  );
}

/** One or two universal joints; what leaves the first one is drawn at its slope. */
function Joints({ stage }: { stage: DrawnStage }): JSX.Element {
  const { yIn, yOut, symbol } = stage;
  const two = symbol === 'two joints';
  const first = two ? -16 : 0;
  const second = two ? 16 : 26;
  return (
    <>
      {two && <rect className="gap" x="-16" y={Math.min(yIn, yOut) - 4} width="32" height={Math.abs(yOut - yIn) + 8} />}
      {!two && <rect className="gap" x="0" y={yOut - 5} width="26" height="10" />}
      <path
        className="shaft"
        d={`M${first} ${yIn}L${second} ${yOut}${two ? '' : 'h4'}`}
        style={{ strokeWidth: stage.thicknessOut }}
      />
      <Yoke x={first} y={yIn} />
      {two && <Yoke x={second} y={yOut} />}
    </>
  );
}

/** The crossed yokes of a universal joint. */
function Yoke({ x, y }: { x: number; y: number }): JSX.Element {
  return (
    <>
      <circle className="body" cx={x} cy={y} r="7" />
      <path className="thin-line" d={`M${x - 7} ${y}h14M${x} ${y - 7}v14`} />
      <circle className="pin" cx={x} cy={y} r="1.8" />
    </>
  );
}
