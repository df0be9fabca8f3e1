import type { EditRequest } from '@oddwheel/build/edit/types';
import type { Fault } from '@oddwheel/build/fault';
import { MOUNT_MEASURE } from '@oddwheel/build/measure/measures';
import { type JSX, memo } from 'react';
import { MeasureBox } from './MeasureBox.tsx';
import { type SectionTools, SheetHead, sectionHeadingId } from './SheetSection.tsx';

interface Props extends Pick<SectionTools, 'build' | 'locked' | 'units' | 'onMeasure' | 'onReveal'> {
  readonly open: boolean;
  readonly onFold: (key: string, open: boolean) => void;
  /** Note on the vehicle so far. */
  readonly note: string;
  readonly onEdit: (request: EditRequest) => Promise<readonly Fault[]>;
}

const MEASURES = [MOUNT_MEASURE];
const NONE = {};
const KEY = 'mounts';

/** Stiffness of the mounts: measured early, kept as a note until the build has mounts. */
export const MountSection = memo(function MountSection(props: Props): JSX.Element {
  const { build, locked, units, open, onFold, note, onMeasure, onReveal, onEdit } = props;
  return (
    <section className="brief-section" aria-labelledby={sectionHeadingId(KEY)}>
      <SheetHead
        id={sectionHeadingId(KEY)}
        name="Mounts"
        state="no place in the build yet"
        open={open}
        onFold={(wanted) => onFold(KEY, wanted)}
      />
      {open && (
        <>
          <p className="lead">
            Mounts come with the subframe. What you measure now is kept as a note on the vehicle, so that it is not
            lost.
          </p>
          <MeasureBox
            name="stiffness of a mount"
            place={`${build} mount`}
            measures={MEASURES}
            given={NONE}
            units={units}
            locked={locked !== null}
            takes={(text) => `Keep ${text} as a note`}
            run={(measure, readings) => onMeasure(measure, null, readings)}
            onTake={async (_, says) => {
              const text = [note, `Stiffness of a mount, measured: ${says}`].filter((line) => line !== '').join('\n');
              const [fault] = await onEdit({ do: 'note', of: '/brief/vehicle', text });
              return fault ? `${fault.problem} ${fault.accepted}` : null;
            }}
            onReveal={onReveal}
          />
        </>
      )}
    </section>
  );
});
