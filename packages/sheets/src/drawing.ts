/** What a drawing is: plain data in millimetres of its view, x to the right, y up. Screen, print and files are made from it. */
import type { Severity } from '@oddwheel/build/assess/types';
import type { Vec3 } from '@oddwheel/quantity/quantity';

export type Point = readonly [number, number];

/** Types of line after ISO 128-2: 01.2 wide, 01.1 narrow, 02.1 dashed, 04.1 long-dashed dotted, 05.1 long-dashed double-dotted. */
export type LineType = 'visible' | 'thin' | 'hidden' | 'centre' | 'keep-out';

/** What a closed outline covers: nothing, what lies behind it, or that with a tint on it. */
export type Fill = 'none' | 'sheet' | 'tint';

/** A step of a path: straight, or along a circle, counterclockwise or not; `large` takes the longer way round. */
export type PathStep =
  | { readonly to: Point }
  | { readonly to: Point; readonly radius: number; readonly large: boolean; readonly ccw: boolean };

export type Element =
  | { readonly kind: 'line'; readonly line: LineType; readonly from: Point; readonly to: Point }
  | {
      readonly kind: 'circle';
      readonly line: LineType;
      readonly fill: Fill;
      readonly centre: Point;
      readonly radius: number;
      /** Radius of a round hole in it, 0 for none. */
      readonly hole: number;
    }
  | {
      readonly kind: 'path';
      readonly line: LineType;
      readonly fill: Fill;
      readonly start: Point;
      readonly steps: readonly PathStep[];
      readonly closed: boolean;
    }
  /** A chain or toothed belt along its pitch line, one dash a pitch: through the pins of a chain, in order. */
  | { readonly kind: 'loop'; readonly pins: readonly Point[]; readonly pitch: number; readonly height: number }
  | { readonly kind: 'hatch'; readonly lines: readonly (readonly [Point, Point])[] }
  | {
      readonly kind: 'text';
      readonly at: Point;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
      /** Degrees, counterclockwise. */
      readonly angle: number;
      readonly weight: 'plain' | 'strong' | 'note';
      readonly severity: Severity | null;
    }
  /** A dimension: two extension lines, the dimension line between its arrows, the text above it. */
  | {
      readonly kind: 'dimension';
      /** What is measured. */
      readonly measured: readonly [Point, Point];
      /** Ends of the dimension line. */
      readonly ends: readonly [Point, Point];
      readonly text: string;
      readonly textAt: Point;
      readonly angle: number;
      readonly severity: Severity | null;
    };

/** One part as it is drawn in one view: what is chosen and dragged. */
export interface DrawnPart {
  /** Address of what is drawn. */
  readonly of: string;
  /** "sprocket 17 on Output". */
  readonly name: string;
  /** Address of the shaft that a drag moves; null where the part is not placed by a shaft. */
  readonly moves: string | null;
  readonly elements: readonly Element[];
}

/** A note that belongs to a finding or to an address: dimensions, labels, rings. */
export interface DrawnNote {
  readonly of: string | null;
  readonly finding: string | null;
  readonly elements: readonly Element[];
}

export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

export type ViewId = 'from above' | 'from the left' | 'from behind' | `along ${string}`;

export interface View {
  readonly id: ViewId;
  /** "Seen from above". */
  readonly title: string;
  /** Directions of the view in vehicle axes, of length one; it is seen against `towards`. */
  readonly right: Vec3;
  readonly up: Vec3;
  readonly towards: Vec3;
  /** Place of the view's origin, the wheel's centre, on the sheet. */
  readonly at: Point;
  /** All that is drawn, notes included. */
  readonly bounds: Bounds;
  /** Farthest first: each covers what lies behind it. */
  readonly parts: readonly DrawnPart[];
  readonly notes: readonly DrawnNote[];
}

export interface Drawing {
  readonly views: readonly View[];
  /** All views on their sheet. */
  readonly bounds: Bounds;
  /** Height of the lettering, mm of the view. */
  readonly textHeight: number;
  readonly projection: 'third angle' | 'first angle';
}
