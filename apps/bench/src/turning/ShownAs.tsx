import type { JSX } from 'react';

/** The drawing to scale, or the build in space to be turned. */
export type Shape = 'drawing' | 'turned';

const SHAPES: readonly { readonly shape: Shape; readonly words: string }[] = [
  { shape: 'drawing', words: 'Drawing' },
  { shape: 'turned', words: 'Turn it' },
];

/** Chooses between the drawing and the picture that can be turned. */
export function ShownAs(props: { readonly shape: Shape; readonly onShape: (shape: Shape) => void }): JSX.Element {
  return (
    <fieldset className="shown-as">
      <legend className="hidden-name">Shown as</legend>
      {SHAPES.map(({ shape, words }) => (
        <label key={shape}>
          <input type="radio" name="shown-as" checked={props.shape === shape} onChange={() => props.onShape(shape)} />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
