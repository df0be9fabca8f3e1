import type { JSX } from 'react';

/** What a camera does to lengths, beside every picture that lengths might be taken from. */
export function CameraCaution(): JSX.Element {
  return (
    <aside className="camera-caution" aria-label="What a camera does to lengths">
      <p className="instruction">
        Stand well back and zoom in, with the camera square to the plane that you want and level with its middle. Take
        two points far apart in that plane, and measure where they are.
      </p>
      <p>
        A camera shows near things larger than far ones. Only what stands in the plane of the two points is to scale.
        What is nearer or farther lies out of place, and the more the farther it is from the middle of the picture: seen
        from 3 m, a thing 100 mm nearer looks 3.4 % larger, and 300 mm from the middle it lies 10 mm out. From 1 m the
        same thing lies 33 mm out. The bend of a wide lens comes on top, and grows toward the edges.
      </p>
      <p>
        Check a third length that you know before you trust the picture, and cut nothing by it: measure on the vehicle.
        A plan or a template scanned flat has no such error; check that its paper has not stretched.
      </p>
    </aside>
  );
}
