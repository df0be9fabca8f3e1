import type { Placing } from '@oddwheel/build/placing/types';
import type { Field } from '@oddwheel/build/session-types';
import { type JSX, useEffect, useId, useMemo, useState } from 'react';
import { faultSentence } from '../inspector/fault-sentence.ts';
import type { Actions } from '../state/actions.ts';
import { AXES, knownPlaces, NO_PLACE, type PlaceText, readPlace } from './known-places.ts';
import { depthBetween, layPicture, PLANES, type UnderPlace, type UnderView } from './lay.ts';
import { type Mark, MarkPoints, WHICH, type Which } from './MarkPoints.tsx';
import { PlaceFields } from './PlaceFields.tsx';
import type { Underlays } from './use-underlays.ts';

interface Props {
  readonly picture: Underlays['pictures'][number];
  /** Its fields as typed. */
  readonly fields: readonly Field[];
  readonly underlays: Underlays;
  readonly placing: Placing | null;
  readonly actions: Actions;
  readonly onView: (view: UnderView) => void;
  readonly onDone: () => void;
}

const VIEWS = Object.keys(PLANES) as UnderView[];
const TITLES = { first: 'Point 1', second: 'Point 2' } as const;
/** A mark is kept to a hundredth of a pixel of a large picture. */
const PARTS = 1e6;
/** Known points of one plane stand no farther apart in depth. */
const ONE_PLANE = 0.005;

const kept = (part: number): number => Math.round(part * PARTS) / PARTS;

/** Lays a picture under a view: two points marked in it, each with where it is on the vehicle. The drawing shows it as it is. */
export function LayPicture(props: Props): JSX.Element {
  const { picture, fields, underlays, placing, actions, onView, onDone } = props;
  const { address, under } = picture;
  const { setDraft } = underlays;
  const [view, setView] = useState<UnderView>(under?.view ?? 'from the left');
  const [marks, setMarks] = useState<Readonly<Record<Which, Mark | null>>>({
    first: under?.first ?? null,
    second: under?.second ?? null,
  });
  const [next, setNext] = useState<Which>('first');
  const [texts, setTexts] = useState<Readonly<Record<Which, PlaceText>>>(() => ({
    first: typedAt(fields, `${address}/under/first/at`),
    second: typedAt(fields, `${address}/under/second/at`),
  }));
  const [fault, setFault] = useState<string | null>(null);
  const id = useId();
  const places = useMemo(() => knownPlaces(placing), [placing]);
  const file = underlays.files.get(picture.file);

  const read = { first: readPlace(texts.first), second: readPlace(texts.second) };
  const says = (which: Which): string => {
    const one = read[which];
    return one.ok || texts[which].some((text) => text === '') ? '' : one.says;
  };
  const drafted = useMemo((): UnderPlace | null => {
    const [a, b] = [readPlace(texts.first), readPlace(texts.second)];
    if (!a.ok || !b.ok || !marks.first || !marks.second) return null;
    return { view, first: { ...marks.first, at: a.at }, second: { ...marks.second, at: b.at } };
  }, [view, marks, texts]);
  useEffect(() => setDraft({ address, under: drafted }), [setDraft, address, drafted]);
  useEffect(() => () => setDraft(null), [setDraft]);

  const lay = drafted && file?.ok ? layPicture(drafted, file) : null;
  const deep = drafted ? depthBetween(drafted) : 0;
  const missing = [
    ...WHICH.filter((which) => marks[which] === null).map((which) => `mark ${TITLES[which].toLowerCase()}`),
    ...WHICH.filter((which) => !read[which].ok).map((which) => `say where ${TITLES[which].toLowerCase()} is`),
  ];
  const keep = async (): Promise<void> => {
    if (!lay?.ok || !marks.first || !marks.second) return;
    const point = (mark: Mark, [x, y, z]: PlaceText) => ({
      right: kept(mark.right),
      down: kept(mark.down),
      at: { x: x.trim(), y: y.trim(), z: z.trim() },
    });
    const value = { view, first: point(marks.first, texts.first), second: point(marks.second, texts.second) };
    const wrong = await actions.applyEdit(`“${picture.name}” laid under the view ${view}`, [
      ...(placing?.raise ?? []),
      { op: 'set', at: `${address}/under`, value },
    ]);
    if (wrong) setFault(faultSentence(wrong, picture.name));
    else onDone();
  };

  return (
    <section className="lay-picture" aria-labelledby={`${id}-heading`}>
      <h4 id={`${id}-heading`}>Laying “{picture.name}” under a view</h4>
      <div className="field">
        <label htmlFor={`${id}-view`}>Lies under the view</label>
        <select
          id={`${id}-view`}
          value={view}
          onChange={(event) => {
            const chosen = VIEWS.find((one) => one === event.target.value) ?? view;
            setView(chosen);
            onView(chosen);
          }}
        >
          {VIEWS.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </div>
      <fieldset className="which-point">
        <legend>The next press on the picture marks</legend>
        {WHICH.map((which) => (
          <label key={which}>
            <input type="radio" name={`${id}-next`} checked={next === which} onChange={() => setNext(which)} />
            {TITLES[which].toLowerCase()}
          </label>
        ))}
      </fieldset>
      {!file ? (
        <p className="lead">The picture is being read.</p>
      ) : !file.ok ? (
        <p className="fails">{file.says}</p>
      ) : (
        <MarkPoints
          name={picture.name}
          file={file}
          marks={marks}
          next={next}
          onMark={(which, mark) => {
            setMarks((before) => ({ ...before, [which]: mark }));
            if (which === 'first' && marks.second === null) setNext('second');
          }}
        />
      )}
      {WHICH.map((which) => (
        <PlaceFields
          key={which}
          title={`Where ${TITLES[which].toLowerCase()} is on the vehicle`}
          text={texts[which]}
          places={places}
          says={says(which)}
          depth={depthAxis(view)}
          onText={(text) => setTexts((before) => ({ ...before, [which]: text }))}
        />
      ))}
      <div role="status">
        {lay?.ok && (
          <p>
            One pixel is {lay.scale.toPrecision(3)} mm, and the picture is turned by{' '}
            {Math.abs((lay.turned * 180) / Math.PI).toFixed(1)}°. It lies under the drawing as you see it there.
          </p>
        )}
        {lay && !lay.ok && <p className="fails">{lay.says}</p>}
        {deep > ONE_PLANE && (
          <p className="thin">
            The two places stand {Math.round(deep * 1000)} mm apart along the line of sight, so a camera shows one of
            them larger: take two in one plane. On a scan laid flat it does no harm.
          </p>
        )}
        {missing.length > 0 && <p className="lead">Still to do: {missing.join(', ')}.</p>}
      </div>
      {fault !== null && (
        <p className="fails" role="alert">
          Not laid: {fault}
        </p>
      )}
      <div className="lay-deeds">
        <button type="button" className="button main" disabled={!lay?.ok} onClick={() => void keep()}>
          Lay it there
        </button>
        <button type="button" className="button" onClick={onDone}>
          Leave it as it was
        </button>
      </div>
    </section>
  );
}

/** The axis along which a view looks. */
const depthAxis = (view: UnderView): number => PLANES[view].towards.findIndex((x) => Math.abs(x) > 0.5);

function typedAt(fields: readonly Field[], at: string): PlaceText {
  const text = (axis: string): string => fields.find(({ address }) => address === `${at}/${axis}`)?.text ?? '';
  return fields.length === 0 ? NO_PLACE : [text(AXES[0]), text(AXES[1]), text(AXES[2])];
}
