import { cameraOutOfPlane } from '@oddwheel/mechanics/camera/out-of-plane';
import { parseInput } from '@oddwheel/quantity/range';
import { type JSX, useId, useState } from 'react';
import { lengthShown } from '../layout/length-shown.ts';
import { keepChoice, keptChoice } from '../state/device.ts';

/** A thing so much nearer than the plane, seen so far from the middle of the picture, is the example. */
const [NEARER, ASIDE] = [0.1, 0.3];

type Told = { readonly ok: true; readonly says: string } | { readonly ok: false; readonly says: string };

/** What a camera at a typed distance does to the example. */
function told(typed: string, units: Readonly<Record<string, string>>): Told | null {
  if (typed.trim() === '') return null;
  const read = parseInput(typed, 'length');
  if (!read.ok) return { ok: false, says: `${read.problem} Write, for example, 3 m or 10 ft.` };
  if (!(read.lo > NEARER))
    return {
      ok: false,
      says: `The camera stood farther off than ${lengthShown(units, NEARER)}. Write, for example, 3 m.`,
    };
  // The nearest end of a range errs most.
  const { out, larger } = cameraOutOfPlane.run({ distance: read.lo, nearer: NEARER, aside: ASIDE });
  return {
    ok: true,
    says: `A thing ${lengthShown(units, NEARER)} nearer than the plane looks ${((larger - 1) * 100).toFixed(1)} % larger; seen ${lengthShown(units, ASIDE)} from the middle of the picture it lies ${lengthShown(units, Math.round(out * 1e4) / 1e4)} too far out. Twice as near or twice as far aside, twice as much; farther things lie too far in.`,
  };
}

/** What a camera does to lengths, beside every picture that lengths might be taken from. */
export function CameraCaution({ units }: { readonly units: Readonly<Record<string, string>> }): JSX.Element {
  const [typed, setTyped] = useState(keptChoice('camera distance') ?? '');
  const id = useId();
  const says = told(typed, units);
  return (
    <aside className="camera-caution" aria-label="What a camera does to lengths">
      <p className="instruction">
        Stand well back and zoom in, with the camera square to the plane that you want and level with its middle. Take
        two points far apart in that plane, and measure where they are.
      </p>
      <p>
        A camera shows near things larger than far ones. Only what stands in the plane of the two points is to scale.
        What is nearer or farther lies out of place, and the more the farther it is from the middle of the picture. The
        bend of a wide lens comes on top, and grows toward the edges.
      </p>
      <div className="field camera-distance">
        <label htmlFor={id}>The camera stood from that plane</label>
        <input
          id={id}
          type="text"
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          placeholder="for example 3 m"
          className={says?.ok === false ? 'wrong' : ''}
          aria-invalid={says?.ok === false}
          aria-describedby={`${id}-says`}
          value={typed}
          onChange={(event) => {
            setTyped(event.target.value);
            keepChoice('camera distance', event.target.value);
          }}
        />
        <p id={`${id}-says`} className={says?.ok === false ? 'note fails' : ''}>
          {says?.says ?? ''}
        </p>
      </div>
      <p>
        Check a third length that you know before you trust the picture, and cut nothing by it: measure on the vehicle.
        A plan or a template scanned flat has no such error; check that its paper has not stretched.
      </p>
    </aside>
  );
}
