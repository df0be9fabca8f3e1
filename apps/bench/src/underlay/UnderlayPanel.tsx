import type { Placing } from '@oddwheel/build/placing/types';
import type { Field } from '@oddwheel/build/session-types';
import { type JSX, useMemo, useState } from 'react';
import { structureTools } from '../inspector/structure-tools.ts';
import { AttachPicture } from '../notes/AttachPicture.tsx';
import type { Actions } from '../state/actions.ts';
import type { RemoteModel } from '../worker/remote.ts';
import { CameraCaution } from './CameraCaution.tsx';
import { LayPicture } from './LayPicture.tsx';
import { layPicture, type UnderView } from './lay.ts';
import './underlay.css';
import type { Underlays } from './use-underlays.ts';

interface Props {
  readonly underlays: Underlays;
  readonly model: RemoteModel;
  readonly actions: Actions;
  readonly placing: Placing | null;
  readonly units: Readonly<Record<string, string>>;
  /** Why nothing can be edited; null where it can. */
  readonly locked: string | null;
  readonly onView: (view: UnderView) => void;
}

type Picture = Underlays['pictures'][number];

/** Photos and scans of the build, laid under a view of the drawing by two known points. */
export function UnderlayPanel(props: Props): JSX.Element {
  const { underlays, model, actions, placing, units, locked, onView } = props;
  const { pictures, strength, setStrength } = underlays;
  const [laying, setLaying] = useState<{ readonly address: string; readonly fields: readonly Field[] } | null>(null);
  const tools = useMemo(() => structureTools(model, actions), [model, actions]);
  const open = pictures.find(({ address }) => address === laying?.address);
  const begin = async (picture: Picture): Promise<void> => {
    const fields = picture.under === null ? [] : await model.fields(picture.address);
    setLaying({ address: picture.address, fields });
    onView(picture.under?.view ?? 'from the left');
  };
  return (
    <section className="underlays" aria-labelledby="underlays-heading">
      <h3 id="underlays-heading">Pictures under the drawing</h3>
      {pictures.length === 0 ? (
        <p className="lead">A photo or a scan can lie under a view, held by two points whose places you know.</p>
      ) : (
        <ul className="plain-list">
          {pictures.map((picture) => (
            <UnderRow
              key={picture.address}
              picture={picture}
              underlays={underlays}
              busy={laying !== null}
              locked={locked}
              onLay={() => void begin(picture)}
              onTake={() =>
                void actions.applyEdit(`“${picture.name}” taken from under the drawing`, [
                  { op: 'remove', at: `${picture.address}/under` },
                ])
              }
            />
          ))}
        </ul>
      )}
      {locked === null ? (
        <div className="underlay-attach">
          <span>Add:</span>
          <AttachPicture of={null} name="the build" tools={tools} locked={null} />
        </div>
      ) : (
        <p className="lead">{locked}</p>
      )}
      {pictures.some(({ under }) => under !== null) && (
        <label className="strength">
          Strength of the pictures, {Math.round(strength * 100)} %
          <input
            type="range"
            min={10}
            max={100}
            step={5}
            value={Math.round(strength * 100)}
            onChange={(event) => setStrength(Number(event.target.value) / 100)}
          />
        </label>
      )}
      {(open !== undefined || pictures.some(({ under }) => under !== null)) && <CameraCaution units={units} />}
      {open && laying && locked === null && (
        <LayPicture
          key={open.address}
          picture={open}
          fields={laying.fields}
          underlays={underlays}
          placing={placing}
          actions={actions}
          onView={onView}
          onDone={() => setLaying(null)}
        />
      )}
    </section>
  );
}

function UnderRow(props: {
  readonly picture: Picture;
  readonly underlays: Underlays;
  /** One is being laid. */
  readonly busy: boolean;
  readonly locked: string | null;
  readonly onLay: () => void;
  readonly onTake: () => void;
}): JSX.Element {
  const { picture, underlays, busy, locked, onLay, onTake } = props;
  const { name, under } = picture;
  const hidden = underlays.hidden.has(picture.file);
  const file = underlays.files.get(picture.file);
  const lay = under && file?.ok ? layPicture(under, file) : null;
  const of = <span className="hidden-name"> {name}</span>;
  return (
    <li>
      <span>
        <b>{name}</b>{' '}
        <span className="lead">
          {under === null ? 'lies under no view' : `lies under the view ${under.view}${hidden ? ', hidden here' : ''}`}
        </span>
        {under && file && !file.ok && <span className="fails"> {file.says}</span>}
        {lay && !lay.ok && <span className="fails"> {lay.says}</span>}
      </span>
      <span className="under-deeds">
        <button type="button" className="link" disabled={busy || locked !== null} onClick={onLay}>
          {under === null ? 'Lay under a view' : 'Adjust'}
          {of}
        </button>
        {under !== null && (
          <>
            <button type="button" className="link" onClick={() => underlays.show(picture.file, hidden)}>
              {hidden ? 'Show' : 'Hide'}
              {of}
            </button>
            <button type="button" className="link" disabled={busy || locked !== null} onClick={onTake}>
              Take from under the drawing
              {of}
            </button>
          </>
        )}
      </span>
    </li>
  );
}
