import type { Drawing, ViewId } from '@oddwheel/sheets/drawing';
import type { JSX } from 'react';

/** Scales that the drawing can be enlarged to, over fitting its frame. */
export const LEAST_ZOOM = 1;
export const MOST_ZOOM = 8;
const ZOOM_STEP = 1.5;

interface Props {
  readonly views: readonly { readonly id: ViewId; readonly title: string }[];
  /** View that is shown alone; null for all. */
  readonly view: ViewId | null;
  readonly onView: (view: ViewId | null) => void;
  readonly projection: Drawing['projection'];
  readonly onProjection: (projection: Drawing['projection']) => void;
  readonly zoom: number;
  readonly onZoom: (zoom: number) => void;
}

/** Which views are shown, in which projection, and how large. */
export function DrawingTools(props: Props): JSX.Element {
  const { views, view, projection, zoom } = props;
  return (
    <fieldset className="drawing-tools">
      <legend className="hidden-name">How the drawing is shown</legend>
      <label>
        Views
        <select value={view ?? ''} onChange={(event) => props.onView((event.target.value || null) as ViewId | null)}>
          <option value="">all on one sheet</option>
          {views.map(({ id, title }) => (
            <option key={id} value={id}>
              {title.replace(/^Seen /, '')}
            </option>
          ))}
        </select>
      </label>
      <label>
        Projection
        <select
          value={projection}
          onChange={(event) => props.onProjection(event.target.value === 'first angle' ? 'first angle' : 'third angle')}
        >
          <option>third angle</option>
          <option>first angle</option>
        </select>
      </label>
      <span className="zoom-buttons">
        <button
          type="button"
          className="button"
          disabled={zoom >= MOST_ZOOM}
          onClick={() => props.onZoom(zoom * ZOOM_STEP)}
        >
          Larger
        </button>
        <button
          type="button"
          className="button"
          disabled={zoom <= LEAST_ZOOM}
          onClick={() => props.onZoom(zoom / ZOOM_STEP)}
        >
          Smaller
        </button>
        <button type="button" className="button" disabled={zoom === 1} onClick={() => props.onZoom(1)}>
          Whole
        </button>
      </span>
    </fieldset>
  );
}
