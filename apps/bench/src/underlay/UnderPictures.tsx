import type { Bounds } from '@oddwheel/sheets/drawing';
import { type JSX, useId } from 'react';
import type { Laid } from './use-underlays.ts';

/** Pictures under a view, cut off where the view ends. */
export function UnderPictures(props: { readonly pictures: readonly Laid[]; readonly bounds: Bounds }): JSX.Element {
  const { pictures, bounds } = props;
  const id = useId();
  const { left, right, bottom, top } = bounds;
  return (
    <g className="under-pictures" clipPath={`url(#${id})`}>
      <clipPath id={id}>
        <rect x={left} y={-top} width={right - left} height={top - bottom} />
      </clipPath>
      {pictures.map(({ address, url, width, height, matrix, strength }) => (
        <image
          key={address}
          href={url}
          width={width}
          height={height}
          preserveAspectRatio="none"
          transform={`matrix(${matrix.join(' ')})`}
          opacity={strength}
        />
      ))}
    </g>
  );
}
